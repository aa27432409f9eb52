import type { Limit } from '../limit/index.ts';
import { amountOf, joinSentences, type Sentence, say, statedApart } from '../quantity/index.ts';

/** Part of the time by which the kit must lengthen the job to be said to limit it [-]. */
const TOLD_FROM = 0.005;

/** Whether the kit or the process sets the time. */
export interface KitTime {
  readonly limitedBy: 'process' | 'kit' | 'nothing';
  /** Median time of the job within the kit; undefined where the kit carries no plan [s]. */
  readonly withKit: number | undefined;
  /** Median time of the job by the process alone; undefined where there is no plan at all [s]. */
  readonly withoutKit: number | undefined;
  /** Margins of the kit that the quicker plan fails. */
  readonly binding: readonly Limit[];
  readonly says: Sentence;
}

/**
 * Tells whether the kit or the process sets the time of a job.
 *
 * @param withKit - median time within the kit [s], > 0; undefined where the kit carries no plan
 * @param withoutKit - median time by the process alone [s], > 0; undefined where there is no plan
 * @param failed - the kit's margins at the plan of the process alone [list], may be empty
 * @returns which of them, with the margins in the way [record]
 * @source none: bookkeeping
 * @example
 * kitTime(1200, 1200, []).limitedBy // => "process"
 * kitTime(undefined, 1200, []).limitedBy // => "kit"
 */
export function kitTime(
  withKit: number | undefined,
  withoutKit: number | undefined,
  failed: readonly Limit[],
): KitTime {
  const times = { withKit, withoutKit };
  const binding = failed.filter((limit) => limit.hard && limit.verdict === 'fails');
  if (withoutKit === undefined) {
    const says = 'No plan makes this groove, with this kit or any other power and air.';
    return withKit === undefined
      ? { limitedBy: 'nothing', ...times, binding: [], says }
      : { limitedBy: 'process', ...times, binding: [], says: PROCESS };
  }
  if (withKit === undefined) {
    const says = say`The kit, not the process, stands in the way: by the process alone the job takes ${amountOf(withoutKit, 'time')}.${asks(binding)}`;
    return { limitedBy: 'kit', ...times, binding, says };
  }
  if (withKit <= withoutKit * (1 + TOLD_FROM))
    return { limitedBy: 'process', ...times, binding: [], says: PROCESS };
  const says = say`The kit, not the process, limits the time: ${amountOf(withKit, 'time')} with it, ${amountOf(withoutKit, 'time')} by the process alone.${asks(binding)}`;
  return { limitedBy: 'kit', ...times, binding, says };
}

const PROCESS = 'The process limits the time: the kit carries the quickest plan that the process allows.';

/** What the quicker plan asks of the kit, and what would give it. */
function asks(binding: readonly Limit[]): Sentence {
  return joinSentences(
    binding.map(({ title, demand, capacity, unit, remedy }) => {
      const [asked, given] = statedApart(demand, capacity, unit);
      return say` ${title}: ${asked} against ${given}; it would take ${remedy}.`;
    }),
    '',
  );
}
