import type { Advice } from '@furrow/engine';

/** A piece of advice in one line, with where it comes from. */
export function adviceWords({ topic, text, source, provenance }: Advice): string {
  const from = source.includes(provenance) ? source : `${source}, ${provenance}`;
  return `${topic}: ${text} (${from})`;
}
