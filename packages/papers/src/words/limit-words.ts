import { formatStatedApart, type Limit, type UnitSystem } from '@furrow/engine';
import { sourceText } from './hazard-words.ts';

/** A margin in words: what is asked for against what there is, and the verdict. */
export function limitWords(limit: Limit, units: UnitSystem): string {
  const [demand, capacity] = formatStatedApart(limit.demand, limit.capacity, limit.unit, units);
  return `${limit.title}: ${demand} (at ${limit.sense} ${capacity}) ${limit.verdict}`;
}

/** Sources of the limits, each once, with how far they can be trusted. */
export function sourceWords(limits: readonly Limit[]): string[] {
  return [...new Set(limits.map(({ source }) => sourceText(source)))];
}
