import type { JobField } from '@furrow/engine';

/** A unit that ends the name of a plain number, and what a shop that works in inches reads it in. */
interface Rate {
  readonly unit: string;
  /** What one of the unit in the name is in that unit. */
  readonly of: number;
}

const METRES_PER_FOOT = 0.3048;
const MM_PER_INCH = 25.4;
const KG_PER_POUND = 0.45359237;

/** By the end of the name of a field; the longest that fits counts. */
const RATES: Readonly<Record<string, Rate>> = {
  min_per_m: { unit: 'min per ft', of: METRES_PER_FOOT },
  kJ_per_mm: { unit: 'kJ per in', of: MM_PER_INCH },
  cm3_per_min: { unit: 'in³ per min', of: (10 / MM_PER_INCH) ** 3 },
  kg_per_h: { unit: 'lb per h', of: 1 / KG_PER_POUND },
  m_per_h: { unit: 'ft per h', of: 1 / METRES_PER_FOOT },
  consumables_per_m: { unit: 'per ft', of: METRES_PER_FOOT },
  filler_per_kg: { unit: 'per lb', of: KG_PER_POUND },
  flux_per_kg: { unit: 'per lb', of: KG_PER_POUND },
  price_per_m3: { unit: 'per ft³', of: METRES_PER_FOOT ** 3 },
};

/** A number whose metric unit stands in the name of its field, as a shop that works in inches reads it. */
export function rateInInches({ path }: JobField, written: string): string | undefined {
  const rate = Object.entries(RATES).find(
    ([end]) => path.endsWith(`.${end}`) || path.endsWith(`_${end}`),
  )?.[1];
  const number = Number(written);
  if (rate === undefined || written.trim() === '' || !Number.isFinite(number) || number === 0)
    return undefined;
  return `${Number((number * rate.of).toPrecision(3))} ${rate.unit}`;
}
