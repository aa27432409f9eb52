import { measureFloor } from '../groove/index.ts';
import { percentiles } from '../numeric/index.ts';
import { lossLength, predictDepth, startDwell } from '../removal/index.ts';
import { settingsOf } from './candidate-of.ts';
import { mean } from './effort.ts';
import { electrodeChanges } from './electrode-changes.ts';
import { doubtOf, spreadOf } from './forecast.ts';
import type { Expectation, PassOutcome, Percentiles, PlanOutcome, WayName } from './outcome.ts';
import { trackOffset } from './pattern.ts';
import { stopOutcomes, tryoutOutcome } from './report-gauge.ts';
import type { ReportInput } from './report-input.ts';
import { limitsOf } from './report-limits.ts';
import { bandFloors, floorOfDepth, sectionOutcome } from './report-section.ts';
import { RUN_IN_SHARE } from './way.ts';
import type { Feasible } from './weigh.ts';
import { worthMeasuring } from './worth.ts';

/** Writes a set-up out, in SI. */
export function planOutcome(
  feasible: Feasible,
  input: ReportInput,
  told: { readonly dominated: boolean; readonly isPlan: boolean },
): PlanOutcome {
  const { job } = input;
  const { effort } = feasible;
  const { setup, outcomes, chances } = feasible.solved;
  const { rig, way } = setup;
  const run = (values: Float64Array): Float64Array => values.filter((_, shop) => outcomes.notRun[shop] === 0);
  const deepest = percentiles(run(outcomes.deepest), BAND) as Triple;
  const widths = run(outcomes.width);
  const width = percentiles(widths, BAND) as Triple;
  const widest = percentiles(widths, [0.999])[0]!;
  const floors = bandFloors(feasible, deepest, widest);
  const shape = measureFloor(floors.p50);
  const tryout = tryoutOutcome(feasible, input);
  const passes = passesOf(feasible, input);
  const electrodesUsed = expectation(run(effort.electrodes));
  return {
    ways: waysOf(feasible),
    dominated: told.dominated,
    electrode: rig.electrode,
    pattern: rig.pattern,
    layers: way.shares.length,
    passLength: feasible.task.run.passLength,
    passes,
    floorDepth: bandOf(deepest),
    leastDepth: bandOf(percentiles(run(outcomes.shallowest), BAND) as Triple),
    width: bandOf(width),
    rootRadius: shape.rootRadius ?? 0,
    wallAngle: shape.wallAngle,
    cuspHeight: shape.cuspHeight,
    ligament: { p05: job.plate.thickness - deepest[2], p50: job.plate.thickness - deepest[1] },
    chances,
    arcTime: expectation(run(effort.arcTime)),
    jobTime: expectation(run(effort.jobTime)),
    cost: expectation(run(effort.cost)),
    wholeCost: expectation(feasible.wholeCost),
    electrodesUsed,
    currency: job.rates.currency,
    arcEnergy: percentiles(run(effort.energy), [0.5])[0]!,
    removed: measureFloor(floorOfDepth(feasible, percentiles(run(outcomes.depth), [0.5])[0]!, widest)).area,
    lossLength: lossLength(Math.max(...passes.map((pass) => pass.travel)), job.kit.loss_window),
    tryout,
    stops: stopOutcomes(feasible, input),
    changes: electrodeChanges(feasible, passes, tryout, input),
    limits: limitsOf(feasible, input, { electrodes: electrodesUsed.p90 }, shape),
    section: sectionOutcome(floors),
    doubt: doubtOf(feasible.forecast, way, Math.exp(feasible.solved.logTarget)),
    worthMeasuring: told.isPlan ? worthMeasuring(feasible) : [],
  };
}

/** Shares of a band's percentiles [-]. */
const BAND = [0.05, 0.5, 0.95] as const;
type Triple = [number, number, number];

function bandOf([p05, p50, p95]: Triple): Percentiles {
  return { p05, p50, p95 };
}

function expectation(sample: Float64Array): Expectation {
  const [p50, p90] = percentiles(sample, [0.5, 0.9]) as [number, number];
  return { mean: mean(sample), p50, p90 };
}

/** The ways that a plan puts together. */
function waysOf({ solved }: Feasible): WayName[] {
  const { tryout, stops } = solved.setup.way;
  if (tryout === undefined && stops === 0) return ['blind'];
  return [...(tryout === undefined ? [] : [tryout.kind]), ...(stops > 0 ? (['layers'] as const) : [])];
}

/** Standard deviations from the median to the 5th and the 95th percentile of a normal distribution [-]. */
const EDGE = 1.6448536;

function passesOf(feasible: Feasible, { job, belief }: ReportInput): PassOutcome[] {
  const { setup, logTarget } = feasible.solved;
  const { rig, way, course } = setup;
  const { electrode, pattern } = rig;
  const target = Math.exp(logTarget);
  const common = {
    current: rig.current,
    voltage: rig.voltage,
    pushAngle: job.kit.push_angle,
  };
  const passes: PassOutcome[] = [];
  const add = (
    place: Pick<PassOutcome, 'layer' | 'track' | 'offset' | 'from' | 'to'>,
    logEnergy: number,
    cut: number,
    setByGauge: boolean,
  ): void => {
    const travel = rig.unitTravel * Math.exp(-logEnergy);
    const spread = spreadOf(feasible.forecast, way);
    passes.push({
      number: passes.length + 1,
      ...place,
      ...common,
      travel,
      setByGauge,
      depth: setByGauge
        ? { p05: cut * Math.exp(-EDGE * spread), p50: cut, p95: cut * Math.exp(EDGE * spread) }
        : predictDepth(belief, { diameter: electrode.diameter, travel, ...common }),
      dwell: startDwell(electrode.diameter, job.kit.push_angle, travel),
    });
  };
  const { length } = job.seam;
  const { tryout } = way;
  if (tryout?.kind === 'run_in') {
    const [rest, deepen] = settingsOf(setup, target);
    const place = { track: 1, offset: 0 };
    add(
      { ...place, layer: 1, from: 0, to: tryout.length },
      course.tryoutEnergy,
      RUN_IN_SHARE * target,
      false,
    );
    add({ ...place, layer: 1, from: tryout.length, to: length }, rest!.logEnergy, target, true);
    const left = (1 - RUN_IN_SHARE) * target;
    add(
      { ...place, layer: 2, from: 0, to: tryout.length },
      deepenEnergy(feasible, deepen!.logEnergy),
      left,
      true,
    );
    return passes;
  }
  course.middle.forEach((logEnergy, layer) => {
    for (let track = 0; track < pattern.tracks; track += 1) {
      add(
        { layer: layer + 1, track: track + 1, offset: trackOffset(pattern, track), from: 0, to: length },
        logEnergy,
        way.shares[layer]! * target,
        tryout !== undefined || course.stopTables[layer] !== undefined,
      );
    }
  });
  return passes;
}

/** The setting that deepens a run-in at the middle reading: that of the table's middle row. */
function deepenEnergy({ solved }: Feasible, otherwise: number): number {
  const rows = solved.setup.course.tryoutTable!.rows.filter((row) => row.action === 'run');
  return rows[Math.floor(rows.length / 2)]?.logEnergy[1] ?? otherwise;
}
