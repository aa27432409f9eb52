import { type GougingStart, KEPT_SOURCES, transformationOf } from '../heat/index.ts';
import type { Job } from '../job/index.ts';
import { type Metal, metalOf, type ThermalMetal } from '../material/index.ts';
import { amountOf, inUnit, say } from '../quantity/index.ts';
import type { HeatAssumption, HeatEnds, HeatPass, HeatRange, HeatReport, Plan } from '../result/index.ts';
import { heatCautions } from './heat-cautions.ts';
import type { StationPass } from './heat-passes.ts';
import { depthPast, peakMap, widthPast } from './heat-peaks.ts';
import { heatReportLimits } from './heat-report-limits.ts';
import type { HeatRuns } from './heat-runs.ts';
import { inCelsius, rangeOf, rangeOrNull, rounded } from './heat-units.ts';
import { reportCooling } from './report-cooling.ts';
import { reportHardness } from './report-hardness.ts';
import { reportPreheat } from './report-preheat.ts';
import { reportSkin } from './report-skin.ts';

/** A wait that has no end is told as this long, with a caution [s]. */
const DAY = 86_400;

/** What the report is made from. */
export interface HeatReportInput {
  readonly job: Job;
  readonly plan: Plan;
  readonly metal: ThermalMetal;
  readonly passes: readonly StationPass[];
  readonly runs: HeatRuns;
  readonly start: GougingStart;
  /** Place of the section from the start of the seam [m]. */
  readonly station: number;
  readonly quality: 'quick' | 'refined';
  /** The end of the seam, where it was followed. */
  readonly ends: HeatEnds | undefined;
}

/** What the plan does to the plate at a station, in the units of the keys. */
export function reportHeat(input: HeatReportInput): HeatReport {
  const { job, metal, passes, runs, start, station, quality } = input;
  const { material, composition } = job.plate;
  const { floor, deepFloor } = passes.at(-1)!;
  const turns = transformationOf(material, composition);
  const past = (of: typeof widthPast, kelvin: number | undefined): HeatRange | null =>
    kelvin === undefined
      ? null
      : rangeOf((end) => inUnit(of(peakMap(runs[end]), end === 'most' ? deepFloor : floor, kelvin), 'mm'));
  const faceTimes = (end: keyof HeatRange): number[] => runs[end].surface.map((point) => point.t85);
  const t85 = rangeOrNull((end) => medianCooling(faceTimes(end)));
  const cooling = reportCooling({
    metal,
    ferritic: metalOf(material).hardens,
    thickness: job.plate.thickness,
    kept: rangeOf((end) => keptOf(passes.at(-1)!, end)),
    before: rangeOf((end) => runs[end].beforePass.at(-1)!),
    field: t85,
  });
  const report: Omit<HeatReport, 'limits' | 'cautions'> = {
    quality,
    grid_error_percent: gridError(runs),
    station_mm: inUnit(station, 'mm'),
    kept_share: keptShare(passes),
    assumptions: assumptionsOf(input, metalOf(material, composition)),
    passes: passes.map((pass, index) => passReport(pass, index, runs)),
    transformation: turns && {
      ac1_degC: inCelsius(turns.ac1),
      ac3_degC: inCelsius(turns.ac3),
      source: turns.source,
    },
    width_past_ac1_mm: past(widthPast, turns?.ac1),
    width_past_ac3_mm: past(widthPast, turns?.ac3),
    depth_past_ac1_mm: past(depthPast, turns?.ac1),
    back_face_degC: rangeOf((end) => inCelsius(runs[end].backFacePeak)),
    t85_s: t85,
    ...cooling,
    ...reportHardness(job, t85 && hardnessTimes(t85, faceTimes)),
    ...reportPreheat(job, start),
    skin: reportSkin(job, input.plan),
    balance: balanceOf(runs),
    ...(input.ends !== undefined && { ends: input.ends }),
  };
  const limits = heatReportLimits(job, report);
  return { ...report, limits, cautions: heatCautions(job, { ...report, limits }) };
}

/** Heat kept of a pass per length [J/m]. */
function keptOf({ heat }: StationPass, end: keyof HeatRange): number {
  return heat.gross * heat.share[end];
}

/** Share of the arc energy of all passes that the plate keeps. */
function keptShare(passes: readonly StationPass[]): HeatRange {
  const gross = passes.reduce((sum, { heat }) => sum + heat.gross, 0);
  return rangeOf((end) => passes.reduce((sum, pass) => sum + keptOf(pass, end), 0) / gross);
}

/** Cooling times of the face for the hardness: where it cools quickest it is hardest, so the ends are those of the whole face. */
function hardnessTimes(t85: HeatRange, timesOf: (end: keyof HeatRange) => readonly number[]): HeatRange {
  const all = (['least', 'middle', 'most'] as const).flatMap(timesOf).filter((time) => !Number.isNaN(time));
  return { least: Math.min(...all), middle: t85.middle, most: Math.max(...all) };
}

/** The middle of the cooling times along the groove's face; NaN where less than half of it passes 800 and 500 degC. */
function medianCooling(times: readonly number[]): number {
  const known = times.filter((time) => !Number.isNaN(time)).sort((a, b) => a - b);
  return 2 * known.length < times.length ? Number.NaN : (known[Math.floor(known.length / 2)] ?? Number.NaN);
}

function gridError(runs: HeatRuns): number | null {
  const errors = Object.values(runs).map((run) => run.gridError);
  return errors.every((error) => error !== null) ? Math.max(...errors) * 100 : null;
}

function passReport(station: StationPass, index: number, runs: HeatRuns): HeatPass {
  const { pass, heat } = station;
  return {
    number: pass.number,
    gross_kJ_per_mm: inUnit(heat.gross, 'kJ_per_mm'),
    with_melt_kJ_per_mm: inUnit(heat.withMelt, 'kJ_per_mm'),
    kept_kJ_per_mm: rangeOf((end) => inUnit(keptOf(station, end), 'kJ_per_mm')),
    reaching_share: heat.reaching,
    at_station_s: rangeOf((end) => runs[end].startedAt[index]!),
    before_degC: rangeOf((end) => inCelsius(runs[end].beforePass[index]!)),
    wait_s: rangeOf((end) => Math.min(DAY, runs[end].waits[index]!)),
  };
}

function balanceOf({ middle }: HeatRuns): HeatReport['balance'] {
  const { given, cutOut, lost, stored, error } = middle.balance;
  return {
    given_kJ_per_m: inUnit(given, 'kJ'),
    cut_out_kJ_per_m: inUnit(cutOut, 'kJ'),
    lost_kJ_per_m: inUnit(lost, 'kJ'),
    stored_kJ_per_m: inUnit(stored, 'kJ'),
    error,
  };
}

function assumptionsOf(
  { job, metal, passes, start, plan }: HeatReportInput,
  { title }: Metal,
): HeatAssumption[] {
  const { heat, plate } = job;
  const stated = [
    ...(heat.kept_least === undefined ? [] : [`at least ${rounded(heat.kept_least * 100)} %`]),
    ...(heat.kept_most === undefined ? [] : [`at most ${rounded(heat.kept_most * 100)} %`]),
  ];
  const last = passes.at(-1)!.pass;
  return [
    ...KEPT_SOURCES,
    ...(stated.length === 0
      ? []
      : [
          {
            topic: 'Share of heat kept',
            text: `The job states ${stated.join(' and ')} of the arc energy, in place of the balance.`,
            source: { text: 'the job', provenance: 'job file' },
          } satisfies HeatAssumption,
        ]),
    {
      topic: 'Plate before the first arc',
      text: say`The whole plate is at ${amountOf(start.temperature, 'temperature')}, in surroundings of ${amountOf(heat.ambient, 'temperature')}.`,
      source: start.source,
    },
    {
      topic: 'Course of the plan',
      text: say`The median course: every pass as deep as predicted, ${last.number} of ${plan.passes.length} passes run, with starts, returns, electrode changes and gauge stops as long as the rates say; waits for the interpass temperature of ${amountOf(heat.interpass_most, 'temperature')} come on top.`,
      source: { text: 'the plan', provenance: 'derived' },
    },
    {
      topic: 'Section',
      text: 'Heat flows across the seam and through the plate, not along it: right away from the ends of a long seam. Each pass gives its heat evenly to the face it has newly cut, while the arc is over the section. Least and middle are at the median depth of the plan, most at its 95th percentile, where least plate is left.',
      source: { text: 'heat conduction on the section, enthalpy with latent heat', provenance: 'derived' },
    },
    {
      topic: 'Metal cut out',
      text: 'Metal that earlier passes have warmed takes its heat along when it is cut out; the arc’s balance counts it as cold.',
      source: { text: 'energy balance, a little too much heat taken away', provenance: 'derived' },
    },
    heat.losses === 'none'
      ? {
          topic: 'Losses',
          text: 'The faces lose no heat.',
          source: { text: 'the job', provenance: 'job file' },
        }
      : {
          topic: 'Losses',
          text: 'The faces lose heat to still air, 4 W/(m2 K), and by radiation with an emissivity of 0.7; the air jet’s own cooling is left out.',
          source: { text: 'EN 1991-1-2 and EN 1993-1-2', provenance: 'memory' },
        },
    ...metal.source.map(({ text, provenance }) => ({
      topic: `${title}: conduction and heat content`,
      text: `${text}.`,
      source: { text: text, provenance },
    })),
    ...(plate.composition === undefined
      ? [
          {
            topic: 'Composition',
            text: 'Not stated: no hardness and no preheat for the re-weld can be told.',
            source: { text: 'the job', provenance: 'job file' },
          } satisfies HeatAssumption,
        ]
      : []),
  ];
}
