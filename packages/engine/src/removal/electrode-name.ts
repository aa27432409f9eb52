import { INCH } from '../quantity/index.ts';

/** Sizes that electrodes go by, in sixteenths and thirty-seconds of an inch. */
const SIZES: readonly (readonly [number, string])[] = [
  [1 / 8, '1/8 in'],
  [5 / 32, '5/32 in'],
  [3 / 16, '3/16 in'],
  [1 / 4, '1/4 in'],
  [5 / 16, '5/16 in'],
  [3 / 8, '3/8 in'],
  [1 / 2, '1/2 in'],
  [5 / 8, '5/8 in'],
  [3 / 4, '3/4 in'],
  [1, '1 in'],
];
/** How far a size in millimetres on a box may be rounded [m]. */
const ROUNDED = 0.06e-3;

/**
 * Names an electrode as people do: by its inch size, with the millimetres beside it; a metric size by its millimetres.
 *
 * @param diameter - electrode diameter [m], > 0
 * @returns the name [text]
 * @source common practice, no source: sizes that electrodes are sold by
 * @example
 * electrodeName(0.0127) // => "1/2 in (12.7 mm)"
 */
export function electrodeName(diameter: number): string {
  const millimetres = `${Number((diameter * 1000).toFixed(1))} mm`;
  const size = SIZES.find(([inches]) => Math.abs(inches * INCH - diameter) <= ROUNDED);
  return size === undefined ? millimetres : `${size[1]} (${millimetres})`;
}
