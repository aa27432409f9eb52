import type { Refusal } from '../../plan/index.ts';
import type { Answer, SupplyOutcome } from '../../result/index.ts';

/** The refusal as it is told where the kit, not the process, stands in the way: what the kit lacks comes first. */
export function kitRefusal(refusal: Refusal, { time }: SupplyOutcome): NonNullable<Answer['refusal']> {
  if (time.limitedBy !== 'kit') return refusal;
  const own = new Set(time.binding.map(({ id }) => id));
  return {
    summary: time.says,
    binding: [
      ...time.binding.map(({ id, demand, capacity, unit, remedy }) => ({
        constraint: id,
        demand,
        limit: capacity,
        unit,
        remedy,
        // what the kit lacks is mended in the kit, and planned anew with it
        frees: false,
      })),
      ...refusal.binding.filter(({ constraint }) => !own.has(constraint)),
    ],
  };
}
