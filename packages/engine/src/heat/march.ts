import { STIFFNESS_MOST } from '../numeric/index.ts';
import type { HeatBody } from './heat-body.ts';

/** One step as an onlooker sees it, before it is taken. */
export interface StepSeen {
  /** Time before the step [s]. */
  readonly from: number;
  /** Time after it [s]. */
  readonly to: number;
  /** State before it [J/m3]. */
  readonly now: Float64Array;
  /** State after it [J/m3]. */
  readonly next: Float64Array;
  /** Rate before it [W/m3]. */
  readonly rate: Float64Array;
  /** Rate after it [W/m3]. */
  readonly nextRate: Float64Array;
}

/** Looks at a step; may ask for a shorter one that ends at a time of its own [s]. */
export type Onlooker = (step: StepSeen) => number | undefined;

/** A body on its way through time. */
export interface March {
  readonly body: HeatBody;
  /** Time reached [s]. */
  time: number;
  /** Step to try next [s]. */
  step: number;
  /** Heat lost at free faces [J]. */
  lost: number;
  /** Steps taken [-]. */
  steps: number;
  /** Steps thrown away [-]. */
  rejected: number;
  /** Stages run, each one sweep over all cells [-]. */
  stages: number;
}

const SAFETY = 0.8;
const GROWTH_MOST = 4;
const SHRINK_MOST = 0.1;
/** A first step, in units of the quickest decay: long enough to be of use, short enough to be near. */
const FIRST_STEP = 4;

/** A march that begins at a time [s]. */
export function march(body: HeatBody, time: number): March {
  return { body, time, step: 0, lost: 0, steps: 0, rejected: 0, stages: 0 };
}

/** Tells the march that something was cut, switched on or off: rates are worked out anew, steps begin small. */
export function disturb(walk: March): void {
  walk.body.kernel.prepare();
  walk.step = 0;
}

/** Marches on to a time, with steps as long as the error allows, and yields the time after each; an onlooker may end it earlier. */
export function* marchTo(walk: March, until: number, onlooker?: Onlooker): Generator<number, void> {
  const { kernel } = walk.body;
  const { now, rate, nextRate } = kernel.memory;
  const stiffness = walk.body.stiffness.reduce((most, each) => Math.max(most, each), 1e-9);
  const longest = STIFFNESS_MOST / stiffness;
  if (walk.step === 0) walk.step = FIRST_STEP / stiffness;
  let stop = until;
  while (walk.time < stop) {
    const left = stop - walk.time;
    let step = Math.min(walk.step, longest);
    // no sliver of a step at the end
    if (step > left * 0.999) step = left;
    else if (step > left / 2) step = left / 2;
    const tried = kernel.attempt(step, stiffness);
    walk.stages += tried.stages;
    const growth = tried.error > 0 ? SAFETY * tried.error ** (-1 / 3) : GROWTH_MOST;
    const wanted = step * Math.min(GROWTH_MOST, Math.max(SHRINK_MOST, growth));
    if (tried.error > 1) {
      walk.step = wanted;
      walk.rejected += 1;
      continue;
    }
    const to = step === left ? stop : walk.time + step;
    const end = onlooker?.({ from: walk.time, to, now, next: kernel.next(), rate, nextRate });
    if (end !== undefined && end < to) {
      stop = end;
      continue;
    }
    kernel.accept();
    walk.lost += tried.lost;
    walk.steps += 1;
    walk.time = to;
    // a step cut short by an end says nothing of how long the next may be
    walk.step = Math.max(wanted, step < walk.step ? Math.min(walk.step, longest) : 0);
    yield walk.time;
    if (end !== undefined) return;
  }
}
