import type { Job } from '../job/index.ts';
import { type Easing, evenly, written } from '../limit/index.ts';
import { readOffOf, say, ZERO_CELSIUS } from '../quantity/index.ts';

/** Step of the temperatures tried, and how many there are [K, -]. */
const STEP = 25;
const STEPS = 40;

/**
 * What eases the limit of the back face: a coating or contents that stand more.
 *
 * @param job - the job [record], from `readJob`
 * @returns the easing, with no steps where the job states no limit [record]
 * @source none: bookkeeping
 * @example
 * backFaceEasing({ heat: {} }).steps // => []
 */
export function backFaceEasing(job: Pick<Job, 'heat'>): Easing {
  const most = job.heat.back_face_most;
  return {
    constraint: 'back_face',
    unit: 'degC',
    now: most === undefined ? 0 : written(most - ZERO_CELSIUS),
    steps: most === undefined ? [] : evenly(most - ZERO_CELSIUS, STEP, STEPS),
    apply: (each, value) => ({ ...each, heat: { ...each.heat, back_face_most: value + ZERO_CELSIUS } }),
    words: (value) => say`a back face that stands ${readOffOf(value + ZERO_CELSIUS, 'temperature', 'least')}`,
  };
}
