import type { Limit } from '../limit/index.ts';
import { formatAmount } from '../quantity/index.ts';
import type { KitTime } from '../result/index.ts';
import type { KitPlans } from './kit-plans.ts';

/** Part of the time by which the kit must lengthen the job to be said to limit it [-]. */
const TOLD_FROM = 0.005;

/** Whether kit or process sets the time; `failed`: the kit's margins at the plan of the process alone. */
export function kitTime({ withKit, withoutKit }: KitPlans, failed: readonly Limit[]): KitTime {
  const within = withKit?.job_time_s.p50 ?? null;
  const free = withoutKit?.job_time_s.p50 ?? null;
  const times = { with_kit_s: within, without_kit_s: free };
  const binding = failed.filter((limit) => limit.hard && limit.verdict === 'fails');
  if (free === null) {
    const says = 'No plan makes this groove, with this kit or any other power and air.';
    return within === null
      ? { limited_by: 'nothing', ...times, binding: [], says }
      : { limited_by: 'process', ...times, binding: [], says: processSays };
  }
  const shown = (seconds: number): string => formatAmount(seconds, 'time', 'metric');
  const named = binding.map(({ id }) => id);
  if (within === null) {
    const says = `The kit, not the process, stands in the way: by the process alone the job takes ${shown(free)}.${asks(binding)}`;
    return { limited_by: 'kit', ...times, binding: named, says };
  }
  if (within <= free * (1 + TOLD_FROM))
    return { limited_by: 'process', ...times, binding: [], says: processSays };
  const says = `The kit, not the process, limits the time: ${shown(within)} with it, ${shown(free)} by the process alone.${asks(binding)}`;
  return { limited_by: 'kit', ...times, binding: named, says };
}

const processSays = 'The process limits the time: the kit carries the quickest plan that the process allows.';

/** What the quicker plan asks of the kit, and what would give it. */
function asks(binding: readonly Limit[]): string {
  return binding
    .map(({ title, demand, capacity, unit, remedy }) => {
      const figure = (value: number): string => `${Number(value.toPrecision(3))} ${unit}`;
      return ` ${title}: ${figure(demand)} against ${figure(capacity)}; it would take ${remedy}.`;
    })
    .join('');
}
