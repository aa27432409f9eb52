import type { Refusal } from '../plan/index.ts';
import type { SupplyReport } from '../result/index.ts';

/** The refusal as it is told where the kit, not the process, stands in the way: what the kit lacks comes first. */
export function kitRefusal(refusal: Refusal, { time, limits }: SupplyReport): Refusal {
  if (time.limited_by !== 'kit') return refusal;
  const lacking = limits.filter(({ id }) => time.binding.includes(id));
  const own = new Set(lacking.map(({ id }) => id));
  return {
    summary: time.says,
    binding: [
      ...lacking.map(({ id, demand, capacity, unit, remedy }) => ({
        constraint: id,
        demand,
        limit: capacity,
        unit,
        remedy,
      })),
      ...refusal.binding.filter(({ constraint }) => !own.has(constraint)),
    ],
  };
}
