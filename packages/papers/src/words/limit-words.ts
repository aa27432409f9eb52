import { formatStatedApart, type Limit, type UnitSystem } from '@furrow/engine';

/** A margin in words: what is asked for against what there is, and the verdict. */
export function limitWords(limit: Limit, units: UnitSystem): string {
  const [demand, capacity] = formatStatedApart(limit.demand, limit.capacity, limit.unit, units);
  return `${limit.title}: ${demand} (at ${limit.sense} ${capacity}) ${limit.verdict}`;
}
