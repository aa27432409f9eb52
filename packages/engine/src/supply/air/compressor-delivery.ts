import type { AirCompressor } from './air-supply.ts';

/**
 * Free air that a compressor delivers at a pressure.
 *
 * Straight lines between the stated points; below the first it is taken as constant, which is cautious since a
 * compressor delivers no less at a lower pressure; above the last none is promised.
 *
 * @param compressor - the compressor [record], points by rising pressure
 * @param pressure - delivery pressure [Pa gauge], any
 * @returns free air (20 degC, 1 bar, dry) [m3/s]
 * @source the compressor's own figures
 * @example
 * freeAirDelivered({ delivery: [{ pressure: 6e5, freeAir: 0.02 }, { pressure: 8e5, freeAir: 0.018 }] }, 7e5) // => 0.019
 */
export function freeAirDelivered({ delivery }: AirCompressor, pressure: number): number {
  const above = delivery.findIndex((point) => point.pressure >= pressure);
  if (above < 0) return 0;
  const upper = delivery[above]!;
  const lower = delivery[above - 1];
  if (lower === undefined) return upper.freeAir;
  const share = (pressure - lower.pressure) / (upper.pressure - lower.pressure);
  return lower.freeAir + share * (upper.freeAir - lower.freeAir);
}
