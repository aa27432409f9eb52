/**
 * The planner against exhaustive search on three small jobs: every electrode, current level, pattern, number of
 * layers and travel of a fine grid, each run in the shops that the planner counts its chances in.
 */
import {
  currentRangeOf,
  drawShops,
  type Job,
  metalOf,
  passWidth,
  percentiles,
  planJob,
  predictDepth,
  predictWidth,
  processLimits,
  publishedBelief,
  type RemovalBelief,
  readJob,
  runPlan,
  type Setup,
  startDwell,
} from '@furrow/engine';
import { machineLine, timed, unrestNote } from './timing.ts';

/** Steps of the travel, even in its logarithm [-]. */
const TRAVELS = 200;
/** Currents of an electrode, as the planner tries them [-]. */
const CURRENTS = 5;
/** Spacings of several tracks [-], even over what the planner may choose. */
const SPACINGS = 13;
const SPACING_RANGE = [0.3, 0.9] as const;
const BAND_MARGIN = 0.2;
const SHOPS = 4000;
const SEED_APART = 104_729;
const CALLS = 15;

const KIT = `
  current: { least: 200 A, most: 1200 A }
  travel: { least: 6 in/min, most: 100 in/min }
rates: { currency: EUR, labour_per_hour: 60, power_per_kWh: 0.2 }
`;

const JOBS: Readonly<Record<string, string>> = {
  'one pass, one electrode': `
furrow: 1
title: Bench, one pass
seam: { length: 2 m }
plate: { thickness: 40 mm }
groove:
  depth: { wanted: 7 mm, plus: 15 mm, minus: 0 mm }
  width: { least: 10 mm, most: 22 mm }
  ligament_least: 5 mm
plan: { gauge_stops: never, tracks_most: 1, layers_most: 4 }
kit:
  electrodes: [{ diameter: 1/2 in, count: 60, price_each: 3.40 }]${KIT}`,
  'several layers, two electrodes': `
furrow: 1
title: Bench, layers
seam: { length: 3 m }
plate: { thickness: 60 mm }
groove:
  depth: { wanted: 14 mm, plus: 18 mm, minus: 1 mm }
  width: { least: 12 mm, most: 26 mm }
  assurance: 90 %
plan: { gauge_stops: never, tracks_most: 1, layers_most: 3 }
kit:
  electrodes:
    - { diameter: 3/8 in, count: 90, price_each: 2.10 }
    - { diameter: 1/2 in, count: 60, price_each: 3.40 }${KIT}`,
  'two tracks': `
furrow: 1
title: Bench, tracks
seam: { length: 2 m }
plate: { thickness: 40 mm }
groove:
  depth: { wanted: 6 mm, plus: 14 mm, minus: 0 mm }
  width: { least: 20 mm, most: 34 mm }
  floor_width: 8 mm
  assurance: 80 %
plan: { gauge_stops: never, tracks_most: 2, layers_most: 4 }
kit:
  electrodes: [{ diameter: 1/2 in, count: 60, price_each: 3.40 }]${KIT}`,
};

interface Found {
  /** Median job time [s]. */
  readonly time: number;
  readonly what: string;
}

function exhaustive(job: Job, posterior: RemovalBelief): { best: Found | undefined; tried: number } {
  const draws = drawShops(posterior, SHOPS, (job.plan.seed + SEED_APART) % 2 ** 31);
  const limits = processLimits(posterior.meltingEnergy);
  const { groove, kit, plan, rates, plate } = job;
  const least = groove.depth.wanted - groove.depth.minus;
  const most = groove.depth.wanted + groove.depth.plus;
  const passLength = job.seam.length;
  const angleTerm = (kit.push_angle - Math.PI / 4) / (Math.PI / 12);
  const voltage = kit.arc_voltage.set;
  let best: Found | undefined;
  let tried = 0;
  for (const electrode of kit.electrodes) {
    const { diameter } = electrode;
    const range = currentRangeOf(electrode)!;
    const [low, high] = [Math.max(range.least, kit.current.least), Math.min(range.most, kit.current.most)];
    const width = predictWidth(posterior, diameter).p50;
    const surface = passWidth({ width, depth: (least + most) / 2 });
    const dwell = startDwell(diameter, kit.push_angle, 1) / passLength;
    for (let level = 0; level < CURRENTS; level += 1) {
      const current = high - ((high - low) * level) / (CURRENTS - 1);
      const unitTravel = (voltage * current) / (diameter ** 2 * posterior.meltingEnergy);
      for (let tracks = 1; tracks <= plan.tracks_most; tracks += 1) {
        for (let gap = 0; gap < (tracks === 1 ? 1 : SPACINGS); gap += 1) {
          const part = SPACING_RANGE[0] + ((SPACING_RANGE[1] - SPACING_RANGE[0]) * gap) / (SPACINGS - 1);
          const spacing = tracks === 1 ? 0 : part * width;
          const medianWidth = surface + (tracks - 1) * spacing;
          // Both hold the median width of several tracks clear of the ends of the band by the same part of it.
          const clear = tracks === 1 ? 0 : BAND_MARGIN * (groove.width.most - groove.width.least);
          if (medianWidth < groove.width.least + clear || medianWidth > groove.width.most - clear) continue;
          for (let layers = 1; layers <= plan.layers_most; layers += 1) {
            for (let step = 0; step < TRAVELS; step += 1) {
              const travel = kit.travel.most * (kit.travel.least / kit.travel.most) ** (step / (TRAVELS - 1));
              tried += 1;
              const logEnergy = Math.log(unitTravel / travel);
              const setup: Setup = {
                electrode,
                current,
                voltage,
                angleTerm,
                unitTravel,
                pattern: { tracks, spacing },
                layers: Array.from({ length: layers }, () => ({ kind: 'set', logEnergy })),
              };
              const came = runPlan(
                setup,
                { zoneWidth: groove.floor_width, passLength, readingSd: kit.gauge.reading_sd },
                draws,
              );
              const share = (holds: (shop: number) => boolean): number => {
                let count = 0;
                for (let shop = 0; shop < SHOPS; shop += 1) if (holds(shop)) count += 1;
                return count / SHOPS;
              };
              if (share((shop) => came.shallowest[shop]! >= least) < groove.assurance) continue;
              if (share((shop) => came.deepest[shop]! <= most) < groove.assurance) continue;
              const ligament = share(
                (shop) => came.deepest[shop]! <= plate.thickness - groove.ligament_least,
              );
              if (ligament < groove.ligament_assurance) continue;
              const passDepth = predictDepth(posterior, {
                diameter,
                current,
                voltage,
                travel,
                pushAngle: kit.push_angle,
              }).p50;
              const candidate = {
                electrode,
                current,
                voltage,
                pushAngle: kit.push_angle,
                travel,
                tracks,
                layers,
                passLength,
                passDepth,
                passWidth: width,
              };
              if (limits(candidate, job).some((limit) => limit.hard && limit.verdict === 'fails')) continue;
              const passes = tracks * layers;
              const burnt = (Math.PI * diameter ** 2 * electrode.length) / 4;
              const times = came.travelTime.map((underWay, shop) => {
                const arc = underWay * (1 + dwell);
                const begun = Math.max(1, Math.ceil((draws.wear[shop]! * current * arc) / burnt));
                const returns = ((passes - 1) * passLength) / rates.return_travel;
                return arc + passes * rates.start_time + returns + (begun - 1) * rates.electrode_change_time;
              });
              const time = percentiles(times, [0.5])[0]!;
              if (best === undefined || time < best.time) {
                best = {
                  time,
                  what: `${(diameter * 1000).toFixed(1)} mm, ${current} A, ${tracks} x ${layers} passes, ${(travel * 60_000).toFixed(0)} mm/min`,
                };
              }
            }
          }
        }
      }
    }
  }
  return { best, tried };
}

console.log(machineLine());
for (const [name, text] of Object.entries(JOBS)) {
  const outcome = readJob(text);
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  const { job } = outcome.value;
  const posterior = publishedBelief(metalOf(job.plate.material, job.plate.composition), job.seam.position);
  const limits = [processLimits(posterior.meltingEnergy)];
  const planning = timed(CALLS, () => planJob(job, posterior, limits));
  const result = planJob(job, posterior, limits);
  const start = process.hrtime.bigint();
  const { best, tried } = exhaustive(job, posterior);
  const searching = Number(process.hrtime.bigint() - start) / 1e9;
  if (!('plan' in result) || best === undefined) throw new Error(`${name}: no plan to compare`);
  const { plan } = result;
  const planned = plan.job_time_s.p50;
  const gap = (planned / best.time - 1) * 100;
  const ratio = searching / planning.median;
  const pass = plan.passes[0]!;
  console.log(`\n${name}`);
  console.log(
    `  planner:    ${planned.toFixed(2)} s  (${plan.electrode_diameter_mm.toFixed(1)} mm, ${pass.current_A} A, ${plan.tracks} x ${plan.layers} passes, ${pass.travel_mm_per_min.toFixed(0)} mm/min) in ${(planning.median * 1000).toFixed(1)} ms`,
  );
  console.log(
    `  exhaustive: ${best.time.toFixed(2)} s  (${best.what}) in ${searching.toFixed(2)} s, ${tried} set-ups in ${SHOPS} shops each`,
  );
  console.log(
    `  objective ${gap >= 0 ? '+' : ''}${gap.toFixed(2)} % (asked: within 1 %): ${Math.abs(gap) <= 1 ? 'holds' : gap < 0 ? 'better than the grid' : 'FALLS SHORT'}; ` +
      `${ratio.toFixed(0)} times less time (asked: 100): ${ratio >= 100 ? 'holds' : 'FALLS SHORT'}${unrestNote(planning)}`,
  );
}
