import unitMath from 'unitmath/dist/UnitMath.js';
import { TRADE_DEFINITIONS, type UnitEntry, type UnitFamily } from './unit-table.ts';

const library = unitMath.config({ definitions: { units: TRADE_DEFINITIONS } });

/** A unit bound to its SI unit, in both directions. */
export interface UnitScale {
  /** SI value: `(value + offset) * top / bottom`, in this order. */
  readonly top: number;
  readonly bottom: number;
  readonly offset: number;
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

/** Sizes of units by definition are whole numbers over one of these, times a power of ten. */
const DIVISORS = [1, 6, 9, 36];
const LARGEST_POWER = 13;
const LARGEST_TOP = 1e11;

/** The factor as a ratio of whole numbers if it is one, else as itself over one. */
function ratioOf(factor: number): { top: number; bottom: number } {
  for (let power = 0; power <= LARGEST_POWER; power += 1) {
    for (const divisor of DIVISORS) {
      const bottom = divisor * 10 ** power;
      const top = Math.round(factor * bottom);
      if (top >= 1 && top < LARGEST_TOP && Math.abs(top / (factor * bottom) - 1) < 1e-14)
        return { top, bottom };
    }
  }
  return { top: factor, bottom: 1 };
}

/**
 * Scale of one unit. A ratio of whole numbers is kept as one, because 0.375 * 254 / 10000 is the very double
 * that 0.009525 is, where 0.375 * 0.0254 is not.
 */
export function scaleOf(entry: UnitEntry, family: UnitFamily): UnitScale {
  const { top, bottom } = ratioOf(factorOf(entry.definition, family.si));
  const offset = entry.offset ?? 0;
  return {
    top,
    bottom,
    offset,
    toSi: (value) => ((value + offset) * top) / bottom,
    fromSi: (value) => (value * bottom) / top - offset,
  };
}
