import type { HeatSpan } from './kept-heat.ts';

/** Least, middle and most, each worked out the same way. */
export function spanOf(of: (end: keyof HeatSpan) => number): HeatSpan {
  return { least: of('least'), middle: of('middle'), most: of('most') };
}

/** The same, or null where one of the three cannot be told. */
export function spanOrNull(of: (end: keyof HeatSpan) => number): HeatSpan | null {
  const span = spanOf(of);
  return Object.values(span).every(Number.isFinite) ? span : null;
}

/** A number as a sentence says it: three digits. */
export function rounded(value: number): string {
  return String(Number(value.toPrecision(3)));
}
