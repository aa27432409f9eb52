import type { UnitSystem } from './quantity-kind.ts';
import { FOOT, INCH, PSI } from './si.ts';

/** A rate that a document states as a plain number whose unit ends the key, as readers of either system have it. */
interface KeyedRate {
  /** End of the key. */
  readonly key: string;
  readonly unit: Readonly<Record<UnitSystem, string>>;
  /** Size of the metric unit in the inch one [-]. */
  readonly inches: number;
}

/** One pound [kg]. */
const POUND = 0.45359237;

const RATES: readonly KeyedRate[] = [
  { key: '_min_per_m', unit: { metric: 'min per m', inch: 'min per ft' }, inches: FOOT },
  {
    key: '_cm3_per_min',
    unit: { metric: 'cm3 per min', inch: 'in3 per min' },
    inches: 1e-6 / INCH ** 3,
  },
  { key: '_kJ_per_mm', unit: { metric: 'kJ/mm', inch: 'kJ/in' }, inches: INCH / 1e-3 },
  { key: '_kg_per_h', unit: { metric: 'kg per h', inch: 'lb per h' }, inches: 1 / POUND },
  { key: '_m_per_h', unit: { metric: 'm per h', inch: 'ft per h' }, inches: 1 / FOOT },
  { key: 'consumables_per_m', unit: { metric: 'per m', inch: 'per ft' }, inches: FOOT },
  { key: '_per_kg', unit: { metric: 'per kg', inch: 'per lb' }, inches: POUND },
  { key: '_mohm_per_m', unit: { metric: 'mohm per m', inch: 'mohm per ft' }, inches: FOOT },
  {
    key: '_kPa_per_100_L_per_min',
    unit: { metric: 'kPa per 100 L/min', inch: 'psi per 100 scfm' },
    inches: (1e3 / PSI) * (FOOT ** 3 / 1e-3),
  },
  { key: 'price_per_m3', unit: { metric: 'per m3', inch: 'per ft3' }, inches: FOOT ** 3 },
];

/** A rate's unit by its key, and the number for a reader; undefined where the key ends in none. */
export interface ShownRate {
  /** The unit as titles of fields have it [text]. */
  readonly stated: string;
  /** The unit of the reader [text]. */
  readonly unit: string;
  /** The number as documents state it, in the reader's unit. */
  readonly of: (stated: number) => number;
}

/**
 * How a rate that ends a key in its unit is read.
 *
 * @param path - key or path of the field [text], any
 * @param system - units of the reader [text], inch or metric
 * @returns unit and number for the reader [record]; undefined where the key ends in no rate
 * @source none: bookkeeping
 * @example
 * rateOf('after.grinding_min_per_m', 'inch').unit // => "min per ft"
 */
export function rateOf(path: string, system: UnitSystem): ShownRate | undefined {
  const rate = RATES.find(({ key }) => path.endsWith(key));
  if (rate === undefined) return undefined;
  return {
    stated: rate.unit.metric,
    unit: rate.unit[system],
    of: (stated) => (system === 'inch' ? stated * rate.inches : stated),
  };
}
