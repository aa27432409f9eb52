import type { Job } from '../../job/index.ts';
import type { Candidate } from '../../limit/index.ts';
import type { DutyInterval } from './duty-interval.ts';

/**
 * Arc on and off over all passes of a candidate, one after the other.
 *
 * Each pass burns for its length over the travel; between two passes the carriage returns and the next is started.
 * Electrode changes and gauge stops are left out, so that the real duty is rather lighter.
 *
 * @param candidate - the setting [record], travel > 0
 * @param job - rates with the start time [s] and the return travel [m/s] [record], from `readJob`
 * @returns arc on and off in turn [list]
 * @source none: bookkeeping
 * @example
 * passDuty({ passLength: 1, travel: 0.01, tracks: 2, layers: 1 }, { rates: { start_time: 60, return_travel: 0.05 } }) // => [{"arc":true,"duration":100},{"arc":false,"duration":80},{"arc":true,"duration":100}]
 */
export function passDuty(
  candidate: Pick<Candidate, 'passLength' | 'travel' | 'tracks' | 'layers'>,
  job: { readonly rates: Pick<Job['rates'], 'start_time' | 'return_travel'> },
): readonly DutyInterval[] {
  const on: DutyInterval = { arc: true, duration: candidate.passLength / candidate.travel };
  const pause = job.rates.start_time + candidate.passLength / job.rates.return_travel;
  const off: DutyInterval = { arc: false, duration: pause };
  const passes = Math.max(1, Math.round(candidate.tracks * candidate.layers));
  return Array.from({ length: 2 * passes - 1 }, (_, i) => (i % 2 === 0 ? on : off));
}
