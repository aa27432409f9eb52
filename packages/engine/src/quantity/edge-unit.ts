/** Size of the SI unit in each unit, as a ratio of exact numbers: 90 s is then exactly 1.5 min. */
const PER_SI = {
  mm: [1e3, 1],
  mm2: [1e6, 1],
  mm3: [1e9, 1],
  mm_per_min: [6e4, 1],
  mm3_per_mm: [1e6, 1],
  m_per_min: [60, 1],
  deg: [180, Math.PI],
  s: [1, 1],
  min: [1, 60],
  h: [1, 3600],
  A: [1, 1],
  kA: [1, 1e3],
  V: [1, 1],
  W: [1, 1],
  kW: [1, 1e3],
  J: [1, 1],
  kJ: [1, 1e3],
  MJ: [1, 1e6],
  kJ_per_mm: [1, 1e6],
  J_per_mm3: [1, 1e9],
  kPa: [1, 1e3],
  bar: [1, 1e5],
  L_per_min: [6e4, 1],
  kg: [1, 1],
  percent: [100, 1],
} as const satisfies Readonly<Record<string, readonly [number, number]>>;

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
  const [top, bottom] = PER_SI[unit];
  return (value * top) / bottom;
}
