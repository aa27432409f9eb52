import type { HeatSpan } from '../heat/index.ts';
import type { HeatRange } from '../result/index.ts';

const ZERO_C = 273.15;

/** A temperature [K] in degC. */
export function inCelsius(kelvin: number): number {
  return kelvin - ZERO_C;
}

/** Least, middle and most, each worked out the same way. */
export function rangeOf(of: (end: keyof HeatSpan) => number): HeatRange {
  return { least: of('least'), middle: of('middle'), most: of('most') };
}

/** The same, or null where one of the three cannot be told. */
export function rangeOrNull(of: (end: keyof HeatSpan) => number): HeatRange | null {
  const range = rangeOf(of);
  return Object.values(range).every(Number.isFinite) ? range : null;
}

/** A number as a sentence says it: three digits. */
export function rounded(value: number): string {
  return String(Number(value.toPrecision(3)));
}
