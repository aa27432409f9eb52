import type { Job } from '../../job/index.ts';
import type { Candidate } from '../../limit/index.ts';
import type { DutyInterval } from '../duty/index.ts';

/** A torch that blows once, for this long. */
export const once = (time: number): readonly DutyInterval[] => [{ arc: true, duration: time }];

/** A setting whose passes blow this long with this pause between them. */
export function settingOf(
  time: number,
  passes = 1,
  pause = 60,
): { readonly candidate: Candidate; readonly job: Job } {
  return {
    candidate: { passLength: time, travel: 1, tracks: passes, layers: 1 } as Candidate,
    job: { rates: { start_time: pause, return_travel: Number.POSITIVE_INFINITY } } as Job,
  };
}
