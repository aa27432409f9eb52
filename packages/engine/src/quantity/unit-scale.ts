import unitMath from 'unitmath/dist/UnitMath.js';
import { TRADE_DEFINITIONS, type UnitEntry, type UnitFamily } from './unit-table.ts';

const library = unitMath.config({ definitions: { units: TRADE_DEFINITIONS } });

/** A unit bound to its SI unit, in both directions. */
export interface UnitScale {
  toSi(value: number): number;
  fromSi(value: number): number;
}

/** Size of a unit in its SI unit, worked out by the unit library from a definition such as `0.001 in`. */
function factorOf(definition: string, si: string): number {
  const written = /^([\d.]+)(?:\/(\d+))? ?(.*)$/.exec(definition);
  const count = written ? Number(written[1]) / Number(written[2] ?? '1') : 1;
  const unit = written ? (written[3] ?? '') : definition;
  return unit === '' ? count : library(count, unit).to(si).value;
}

/**
 * Scale of one unit. Where the SI unit is a whole number of these units, it divides by that number instead of
 * multiplying by its rounded inverse, so that 9.5 mm is 0.0095 m to the last bit.
 */
export function scaleOf(entry: UnitEntry, family: UnitFamily): UnitScale {
  const factor = factorOf(entry.definition, family.si);
  const offset = entry.offset ?? 0;
  const inverse = Math.round(1 / factor);
  const whole = factor < 1 && Math.abs(inverse * factor - 1) < 1e-14;
  return whole && offset === 0
    ? { toSi: (value) => value / inverse, fromSi: (value) => value * inverse }
    : { toSi: (value) => (value + offset) * factor, fromSi: (value) => value / factor - offset };
}
