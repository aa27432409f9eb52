import type { Job } from '../job/index.ts';
import { type Metal, metalOf, type ThermalMetal } from '../material/index.ts';
import { amountOf, inUnit, say } from '../quantity/index.ts';
import { heatCautions } from './cautions.ts';
import { coolingRows } from './cooling-rows.ts';
import type { HeatField } from './field.ts';
import { fieldLimits } from './field-limits.ts';
import type { GougingStart } from './gouging-start.ts';
import { hardnessOutcome } from './hardness-rows.ts';
import { type HeatSpan, KEPT_SOURCES } from './kept-heat.ts';
import type { HeatAssumptionOutcome, HeatOutcome, HeatPassOutcome } from './outcome.ts';
import { depthPast, peakMap, widthPast } from './peak-map.ts';
import { preheatOutcome } from './preheat-rows.ts';
import { endWindow, heatEnds, SHORT_SEAM } from './seam-end-of-plan.ts';
import { type HeatRuns, type StationPass, sectionRuns } from './section-runs.ts';
import { rounded, spanOf, spanOrNull } from './span.ts';
import { transformationOf } from './transformation.ts';

/** A wait that has no end is told as this long, with a caution [s]. */
const DAY = 86_400;
/** Share of the work that the sections are, where an end is followed too [-]. */
const RUNS_SHARE = 0.75;

/** What is followed. */
export interface HeatOfPlanInput {
  readonly job: Job;
  readonly metal: ThermalMetal;
  readonly start: GougingStart;
  /** Place of the section from the start of the seam [m]. */
  readonly station: number;
  readonly quality: 'quick' | 'refined';
  /** The passes as they go by a place of the seam [m]. */
  readonly passesAt: (place: number) => readonly StationPass[];
  /** Passes of the whole plan [-]. */
  readonly planned: number;
  /** What grinding the skin off takes. */
  readonly skin: HeatOutcome['skin'];
}

/**
 * Follows the heat of a plan's passes at one place of the seam, and at its end where that matters.
 *
 * A generator that yields the share done; its result is what the passes do to the plate, with the field of the middle
 * share of heat kept.
 *
 * @param input - job, metal, passes, place and quality [record], at least one pass at every place
 * @returns a generator of the share done, from 0 to 1, whose result is the outcome in SI and the field [record]
 * @source heat conduction on the section, enthalpy with latent heat; each figure carries its own
 * @example
 * heatOfPlan({ station: 0 }).next === undefined // => false
 */
export function* heatOfPlan(
  input: HeatOfPlanInput,
): Generator<number, { readonly outcome: HeatOutcome; readonly field: HeatField }> {
  const { job, metal, start, station, quality, passesAt } = input;
  const passes = passesAt(station);
  const follow = { job, metal, start: start.temperature, quality };
  const hasEnds = job.seam.path === 'straight';
  const withEnds = hasEnds && (quality === 'refined' || job.seam.length <= SHORT_SEAM);
  const runs = yield* shareOf(sectionRuns({ ...follow, passes }), 0, withEnds ? RUNS_SHARE : 1);
  const ends = withEnds
    ? yield* shareOf(
        heatEnds({ ...follow, passes: passesAt(job.seam.length - endWindow(job)) }),
        RUNS_SHARE,
        1,
      )
    : undefined;
  const { across, below, frames } = runs.middle;
  return { outcome: outcomeOf(input, passes, runs, ends), field: { across, below, frames } };
}

/** Runs a part of the work, its share done told as a stretch of the whole. */
function* shareOf<T>(work: Generator<number, T>, from: number, to: number): Generator<number, T> {
  for (let step = work.next(); ; step = work.next()) {
    if (step.done) return step.value;
    yield from + (to - from) * step.value;
  }
}

function outcomeOf(
  input: HeatOfPlanInput,
  passes: readonly StationPass[],
  runs: HeatRuns,
  ends: HeatOutcome['ends'],
): HeatOutcome {
  const { job, metal, start, station, quality, skin } = input;
  const { material, composition } = job.plate;
  const { floor, deepFloor } = passes.at(-1)!;
  const turns = transformationOf(material, composition);
  const past = (of: typeof widthPast, kelvin: number | undefined): HeatSpan | null =>
    kelvin === undefined
      ? null
      : spanOf((end) => of(peakMap(runs[end]), end === 'most' ? deepFloor : floor, kelvin));
  const faceTimes = (end: keyof HeatSpan): number[] => runs[end].surface.map((point) => point.t85);
  const t85 = spanOrNull((end) => medianCooling(faceTimes(end)));
  const found = {
    quality,
    gridError: gridError(runs),
    station,
    keptShare: keptShare(passes),
    assumptions: assumptionsOf(input, passes, metalOf(material, composition)),
    passes: passes.map((pass, index) => passOutcome(pass, index, runs)),
    transformation: turns,
    widthPastAc1: past(widthPast, turns?.ac1),
    widthPastAc3: past(widthPast, turns?.ac3),
    depthPastAc1: past(depthPast, turns?.ac1),
    backFace: spanOf((end) => runs[end].backFacePeak),
    t85,
    cooling: coolingRows({
      metal,
      ferritic: metalOf(material).hardens,
      thickness: job.plate.thickness,
      kept: spanOf((end) => keptOf(passes.at(-1)!, end)),
      before: spanOf((end) => runs[end].beforePass.at(-1)!),
      field: t85,
    }),
    hardness: hardnessOutcome(job, t85 && hardnessTimes(t85, faceTimes)),
    preheat: preheatOutcome(job, start),
    skin,
    balance: runs.middle.balance,
    ends,
  };
  const limits = fieldLimits(job, found);
  return { ...found, limits, cautions: heatCautions(job, { ...found, limits }) };
}

/** Heat kept of a pass per length [J/m]. */
function keptOf({ heat }: StationPass, end: keyof HeatSpan): number {
  return heat.gross * heat.share[end];
}

/** Share of the arc energy of all passes that the plate keeps. */
function keptShare(passes: readonly StationPass[]): HeatSpan {
  const gross = passes.reduce((sum, { heat }) => sum + heat.gross, 0);
  return spanOf((end) => passes.reduce((sum, pass) => sum + keptOf(pass, end), 0) / gross);
}

/** Cooling times of the face for the hardness: where it cools quickest it is hardest, so the ends are those of the whole face. */
function hardnessTimes(t85: HeatSpan, timesOf: (end: keyof HeatSpan) => readonly number[]): HeatSpan {
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
  return errors.every((error) => error !== null) ? Math.max(...errors) : null;
}

function passOutcome({ number, heat }: StationPass, index: number, runs: HeatRuns): HeatPassOutcome {
  return {
    number,
    heat,
    atStation: spanOf((end) => runs[end].startedAt[index]!),
    before: spanOf((end) => runs[end].beforePass[index]!),
    wait: spanOf((end) => Math.min(DAY, runs[end].waits[index]!)),
  };
}

function assumptionsOf(
  { job, metal, start, planned }: HeatOfPlanInput,
  passes: readonly StationPass[],
  { title }: Metal,
): HeatAssumptionOutcome[] {
  const { heat, plate } = job;
  const stated = [
    ...(heat.kept_least === undefined ? [] : [`at least ${rounded(inUnit(heat.kept_least, '%'))} %`]),
    ...(heat.kept_most === undefined ? [] : [`at most ${rounded(inUnit(heat.kept_most, '%'))} %`]),
  ];
  const last = passes.at(-1)!;
  return [
    ...KEPT_SOURCES,
    ...(stated.length === 0
      ? []
      : [
          {
            topic: 'Share of heat kept',
            text: `The job states ${stated.join(' and ')} of the arc energy, in place of the balance.`,
            source: { text: 'the job', provenance: 'job file' },
          } satisfies HeatAssumptionOutcome,
        ]),
    {
      topic: 'Plate before the first arc',
      text: say`The whole plate is at ${amountOf(start.temperature, 'temperature')}, in surroundings of ${amountOf(heat.ambient, 'temperature')}.`,
      source: start.source,
    },
    {
      topic: 'Course of the plan',
      text: say`The median course: every pass as deep as predicted, ${last.number} of ${planned} passes run, with starts, returns, electrode changes and gauge stops as long as the rates say; waits for the interpass temperature of ${amountOf(heat.interpass_most, 'temperature')} come on top.`,
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
          } satisfies HeatAssumptionOutcome,
        ]
      : []),
  ];
}
