import type { Job } from '../job/index.ts';
import type { ThermalMetal } from '../material/index.ts';
import { amountOf, say } from '../quantity/index.ts';
import type { HeatEndsOutcome } from './outcome.ts';
import type { SeamEndHeat } from './seam-end-heat.ts';
import type { StationPass } from './section-runs.ts';
import { solveSeamEnd } from './solve-seam-end.ts';
import { transformationOf } from './transformation.ts';

/** A seam up to this length is followed whole [m]. */
export const SHORT_SEAM = 0.15;
/** Stretch followed before the end of a longer seam, in thicknesses, and at least [-], [m]. */
const WINDOW = { thicknesses: 1.5, least: 0.04 } as const;
/** Metal beyond the end of a pocket, in thicknesses [-]. */
const BEYOND = 3;
/** Time followed after the last pass [s]. */
const AFTER = 300;
/** Where a metal does not turn to austenite, the reach of this temperature is followed, and not told [K]. */
const NO_TURN = 1000;

/** Stretch of seam about its end that is followed [m]. */
export function endWindow({ seam, plate }: Job): number {
  if (seam.length <= SHORT_SEAM) return seam.length;
  return Math.min(seam.length, Math.max(WINDOW.least, WINDOW.thicknesses * plate.thickness));
}

/** What the end of the seam is followed from. */
export interface HeatEndsInput {
  readonly job: Job;
  readonly metal: ThermalMetal;
  /** The passes as they come by the start of the window. */
  readonly passes: readonly StationPass[];
  /** Temperature of the plate before the first arc [K]. */
  readonly start: number;
  readonly quality: 'quick' | 'refined';
}

/** Follows the end of the seam, or the whole of a short one, for the most heat kept; yields the share done. */
export function* heatEnds(input: HeatEndsInput): Generator<number, HeatEndsOutcome> {
  const { job, metal, passes, start, quality } = input;
  const { plate, seam, groove, heat } = job;
  const length = endWindow(job);
  const whole = length === seam.length;
  const beyond = groove.shape === 'pocket' ? BEYOND * plate.thickness : 0;
  const end = { seamGoesOn: false, plate: beyond };
  const turns = transformationOf(plate.material, plate.composition);
  const last = passes.at(-1)!;
  const result = yield* solveSeamEnd({
    metal,
    thickness: plate.thickness,
    ambient: heat.ambient,
    start,
    losses: heat.losses,
    length,
    before: whole ? end : { seamGoesOn: true, plate: 0 },
    after: end,
    passes: passes.map(({ at, duration, deepFloor, heat: { gross, share }, travel }) => ({
      at,
      duration,
      floor: deepFloor,
      travel,
      keptPerLength: gross * share.most,
    })),
    past: turns?.ac1 ?? NO_TURN,
    until: last.at + length / last.travel + AFTER,
    quality,
  });
  return endsOutcome(result, length, whole, beyond > 0, turns !== null);
}

function endsOutcome(
  { places, section }: SeamEndHeat,
  length: number,
  whole: boolean,
  plateBeyond: boolean,
  turning: boolean,
): HeatEndsOutcome {
  const hottest = Math.max(...places.map((place) => place.backFacePeak));
  const times = places.map((place) => place.t85).filter((time) => !Number.isNaN(time));
  const where = whole ? 'the whole seam' : say`the last ${amountOf(length, 'length')} of the seam`;
  return {
    window: length,
    wholeSeam: whole,
    backFace: hottest,
    sectionBackFace: section.backFacePeak,
    t85: times.length === 0 ? null : { least: Math.min(...times), most: Math.max(...times) },
    sectionT85: Number.isNaN(section.t85) ? null : section.t85,
    widthPastAc1: turning ? Math.max(...places.map((place) => place.widthPast)) : null,
    sectionWidthPastAc1: turning ? section.widthPast : null,
    note: say`In three dimensions over ${where}, for the most heat kept, without waits; ${
      plateBeyond
        ? 'the plate goes on beyond the ends'
        : 'the seam is taken to end at the plate’s edge, which is the hotter case'
    }.`,
  };
}
