import type { Limit, UnitSystem } from '@furrow/engine';
import { shownAmount } from './shown-amount.ts';

/** A margin in words: what is asked for against what there is, and the verdict. */
export function limitWords(limit: Limit, units: UnitSystem): string {
  const demand = shownAmount(limit.demand, limit.unit, units);
  const capacity = shownAmount(limit.capacity, limit.unit, units);
  return `${limit.title}: ${demand} (at ${limit.sense} ${capacity}) ${limit.verdict}`;
}

/** Sources of the limits, each once, with how far they can be trusted. */
export function sourceWords(limits: readonly Limit[]): string[] {
  const texts = limits.map(({ source: { text, provenance } }) =>
    text.includes(provenance) ? text : `${text} (${provenance})`,
  );
  return [...new Set(texts)];
}
