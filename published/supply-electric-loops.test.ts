import { readFileSync } from 'node:fs';
import { type ElectricLoop, solveLoop, type WorkingLoop } from '@furrow/engine';
import { expect, it } from 'vitest';

/**
 * Ten electric loops, made up, against scipy (supply-electric-loops.py): sources of all kinds alone and in parallel,
 * leads that settle or go through a duty. The engine reads the heat off a lead from a table, which costs it
 * some thousandths of a kelvin.
 */
const read = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');
const loops = JSON.parse(read('./supply-electric-loops.json')) as Record<string, ElectricLoop>;
const rows = read('./supply-electric-loops.csv')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','));

function ours(loop: WorkingLoop, quantity: string, place: number): number {
  if (quantity === 'available_V') return loop.available_V;
  if (quantity === 'arc_voltage_V') return loop.arc_voltage_V;
  return quantity === 'current_A' ? loop.sources[place]!.current_A : loop.leads[place]!.temperature_K;
}

it.each(Object.entries(loops))('%s', (name, loop) => {
  const solved = solveLoop(loop);
  if (!solved.ok || solved.value.kind !== 'operating_point') throw new Error(JSON.stringify(solved));
  const wanted = rows.filter((row) => row[0] === name);
  expect(wanted.length).toBeGreaterThanOrEqual(4);
  for (const [, quantity, place, value] of wanted) {
    const found = ours(solved.value, quantity!, Number(place));
    const apart = Math.abs(found - Number(value));
    const allowed = quantity === 'temperature_K' ? 0.01 : 1e-5 * Math.abs(Number(value));
    expect(apart, `${quantity} ${place}: ${found} against ${value}`).toBeLessThanOrEqual(allowed);
  }
});
