import { faceHeat, gougingStart } from '../heat/index.ts';
import type { ReadJob } from '../job/index.ts';
import type { Knowledge } from '../learn/index.ts';
import { thermalOf } from '../material/index.ts';
import type { Answer } from '../result/index.ts';
import { beliefOfJob } from './belief-of-job.ts';
import type { HeatAnswer } from './heat-answer.ts';
import { endWindow, heatEnds, SHORT_SEAM } from './heat-ends.ts';
import { type StationPass, stationPasses } from './heat-passes.ts';
import { heatRuns } from './heat-runs.ts';
import { reportHeat } from './report-heat.ts';

/** Share of the work that the sections are, where an end is followed too [-]. */
const RUNS_SHARE = 0.75;

/** Which look at the heat is wanted. */
export interface HeatQuestion {
  /** Place of the section from the start of the seam; the middle when left out [m]. */
  readonly station?: number | undefined;
  readonly quality: 'quick' | 'refined';
  /** What the shop has learned, as it was planned with. */
  readonly knowledge?: Knowledge | undefined;
}

/**
 * Follows the heat of a plan at one place of the seam: fields, peaks, cooling times, hardness, preheat, skin.
 *
 * A generator that yields the share done, so that a worker can stream and cancel it; its result is the report with
 * the field of the middle share of heat kept, or null for an answer without a plan.
 *
 * @param read - the job as read [record], from `readJob`
 * @param answer - the answer to it [record], from `answerJob`
 * @param question - station and quality [record], station from 0 to the length of the seam
 * @returns a generator of the share done, from 0 to 1, whose result is the heat answer or null [record]
 * @source none: composition
 * @example
 * answerHeat({ job: {} }, { refusal: {} }, { quality: 'quick' }).next().value // => null
 */
export function* answerHeat(
  { job }: ReadJob,
  { plan }: Answer,
  { station, quality, knowledge }: HeatQuestion,
): Generator<number, HeatAnswer | null> {
  if (plan === undefined) return null;
  const posterior = beliefOfJob(job, knowledge);
  const metal = thermalOf(job.plate.material);
  const start = gougingStart(job);
  const place = Math.min(job.seam.length, Math.max(0, station ?? job.seam.length / 2));
  const need = { energy: posterior.meltingEnergy, face: faceHeat(metal, start.temperature) };
  const at = (where: number): readonly StationPass[] =>
    stationPasses({ job, plan, posterior, station: where, need });
  const passes = at(place);
  const follow = { job, metal, start: start.temperature, quality };
  const hasEnds = job.seam.path === 'straight';
  const withEnds = hasEnds && (quality === 'refined' || job.seam.length <= SHORT_SEAM);
  const runs = yield* shareOf(heatRuns({ ...follow, passes }), 0, withEnds ? RUNS_SHARE : 1);
  const ends = withEnds
    ? yield* shareOf(heatEnds({ ...follow, passes: at(job.seam.length - endWindow(job)) }), RUNS_SHARE, 1)
    : undefined;
  const { across, below, frames } = runs.middle;
  const report = reportHeat({ job, plan, metal, passes, runs, start, station: place, quality, ends });
  return { report, field: { across, below, frames } };
}

/** Runs a part of the work, its share done told as a stretch of the whole. */
function* shareOf<T>(work: Generator<number, T>, from: number, to: number): Generator<number, T> {
  for (let step = work.next(); ; step = work.next()) {
    if (step.done) return step.value;
    yield from + (to - from) * step.value;
  }
}
