const PER_SI = {
  mm: 1e3,
  mm2: 1e6,
  mm3: 1e9,
  mm_per_min: 6e4,
  mm3_per_mm: 1e6,
  m_per_min: 60,
  deg: 180 / Math.PI,
  s: 1,
  min: 1 / 60,
  h: 1 / 3600,
  A: 1,
  kA: 1e-3,
  V: 1,
  W: 1,
  kW: 1e-3,
  J: 1,
  kJ: 1e-3,
  MJ: 1e-6,
  kJ_per_mm: 1e-6,
  J_per_mm3: 1e-9,
  kPa: 1e-3,
  bar: 1e-5,
  L_per_min: 6e4,
  kg: 1,
  percent: 100,
} as const;

/** Units that keys of results carry, such as `depth_mm` and `travel_mm_per_min`. */
export type EdgeUnit = keyof typeof PER_SI;

/**
 * Value of an SI quantity in a unit that keys of results carry.
 *
 * @param value - quantity in its SI unit [SI unit of the quantity], any finite number
 * @param unit - unit of the key [text], one of the EdgeUnit names
 * @returns the quantity in that unit [that unit]
 * @source none: bookkeeping
 * @example
 * inUnit(0.0118, 'mm_per_min') // => 708
 */
export function inUnit(value: number, unit: EdgeUnit): number {
  const perSi = PER_SI[unit];
  // dividing by the whole number keeps 90 s at exactly 1.5 min
  return perSi < 1 ? value / Math.round(1 / perSi) : value * perSi;
}
