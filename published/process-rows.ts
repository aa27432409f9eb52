import { readFileSync } from 'node:fs';
import type { RemovalRow } from '@furrow/engine';
import { z } from 'zod';

const range = z.union([z.number(), z.array(z.number()).length(2)]);

const entry = z.object({
  id: z.string(),
  quantity: z.string(),
  inputs: z.looseObject({ electrode_diameter_mm: z.number().optional(), current_A: z.number().optional() }),
  output: z.looseObject({}),
});

const rowOutput = z.object({
  travel_mm_per_min: range,
  depth_mm: range,
  width_mm: range.optional(),
  electrode_wear_mm_per_min: z.number(),
});

/** Arc voltage taken for rows that print none [V]: middle of the usual window (common practice, no source). */
export const ROW_VOLTAGE = 42;

/** The entries of the published process table, with their provenance. */
export const PROCESS_ENTRIES = z
  .array(entry)
  .parse(JSON.parse(readFileSync(new URL('./process.json', import.meta.url), 'utf8')));

/**
 * The operating rows as points of the removal law. A mechanised row prints two ends (slow and deep, fast and
 * shallow): both are points. A manual row prints a range of depth and width at one travel: its middle is the point.
 */
export const PROCESS_ROWS: readonly RemovalRow[] = PROCESS_ENTRIES.filter(
  (item) => item.quantity === 'operating row',
).flatMap((item): RemovalRow[] => {
  const output = rowOutput.parse(item.output);
  const diameter = (item.inputs.electrode_diameter_mm ?? Number.NaN) / 1000;
  const current = item.inputs.current_A ?? Number.NaN;
  const point = (travel: number, depth: number, end: string): RemovalRow => ({
    id: `${item.id}${end}`,
    setting: { diameter, current, voltage: ROW_VOLTAGE, travel: travel / 60_000, pushAngle: Math.PI / 4 },
    depth: depth / 1000,
    ...(output.width_mm === undefined ? {} : { width: middle(output.width_mm) / 1000 }),
    ...(end === ' fast' ? {} : { wear: output.electrode_wear_mm_per_min / 60_000 }),
  });
  if (typeof output.travel_mm_per_min === 'number') {
    return [point(output.travel_mm_per_min, middle(output.depth_mm), '')];
  }
  const [slow, fast] = output.travel_mm_per_min;
  const [deep, shallow] = output.depth_mm as [number, number];
  return [point(slow!, deep, ' slow'), point(fast!, shallow, ' fast')];
});

function middle(value: number | number[]): number {
  return typeof value === 'number' ? value : (value[0]! + value[1]!) / 2;
}
