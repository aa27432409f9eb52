import type { ColumnQuantity } from './column-name.ts';

/** Numbers that loggers write for no value (common practice, no source). Each counts as such only outside what the column can show. */
const NO_VALUE: ReadonlySet<number> = new Set([
  ...[-99, -99.9, -99.99, -999, -999.9, -999.99, -999.25, -9999, -9999.9, -99999],
  ...[999, 999.9, 999.99, 9999, 9999.9, 99999, 999999, 32767, -32768, 65535, 2147483647, -2147483648],
  ...[1e30, -1e30, 9.9e37, 9.91e37, -9.9e37, 1e35, 3.4e38],
]);

/** What a rig or a gauge can show at most, in SI, either way (common practice, no source). */
const MOST: Partial<Record<ColumnQuantity, number>> = {
  voltage: 150,
  current: 5000,
  travel: 0.5,
  feed: 0.5,
  position: 500,
  air_pressure: 2.5e6,
  air_flow: 0.2,
  station: 500,
  depth: 0.5,
  width: 0.5,
  radius: 0.5,
  x: 500,
  y: 500,
  z: 5,
};

/** Most that a column can show [SI unit of the quantity]; no end for a clock. */
export function mostShown(quantity: ColumnQuantity): number {
  return MOST[quantity] ?? Number.POSITIVE_INFINITY;
}

/** Whether a number as written is one that stands for no value. */
export function standsForNoValue(written: number): boolean {
  return NO_VALUE.has(written);
}
