import { INCH } from './si.ts';

/** From here on a tape is read in feet and inches [in]. */
const FEET_FROM = 24;
/** Up to here a fraction that was meant is kept beside the feet; longer things are told to the inch [in]. */
const FRACTION_MOST = 48;
/** Below this, sizes come in sixty-fourths [in]. */
const FINE_BELOW = 1 / 4;
/** How far off a sixteenth a length may be to have been meant as one [in]. */
const MEANT = 1e-5;
/** Parts of an inch that a length is told in which was not meant in inches, by the length they hold below [in]. */
const PARTS = [
  { below: 2, parts: 16 },
  { below: 10, parts: 8 },
  { below: FEET_FROM, parts: 4 },
] as const;

/** A whole number of parts of an inch in lowest terms: 22 of 16 -> `1 3/8`. */
function fraction(parts: number, of: number): string {
  const whole = Math.floor(parts / of);
  let top = parts % of;
  let bottom = of;
  if (top === 0) return String(whole);
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

/** The length in sixteenths where it was meant in inches, else in the parts that its size is worth. */
function sixteenthsOf(size: number): number {
  const sixteenths = Math.round(size * 16);
  if (size < FRACTION_MOST && Math.abs(size - sixteenths / 16) < MEANT) return sixteenths;
  const parts = PARTS.find(({ below }) => size < below)?.parts ?? 1;
  return (Math.round(size * parts) * 16) / parts;
}

/**
 * A length as a tape or a size is read: sixteenths, sixty-fourths below a quarter, thousandths below a sixteenth, feet and
 * inches from two feet on. What was not meant in inches comes in coarser parts the longer it is.
 */
export function formatInchLength(metres: number): string {
  const size = Math.abs(metres) / INCH;
  if (size === 0) return '0 in';
  if (size < 1 / 16) return `${(metres / INCH).toFixed(3)} in`;
  const sign = metres < 0 ? '-' : '';
  if (size < FINE_BELOW) return `${sign}${fraction(Math.round(size * 64), 64)} in`;
  const sixteenths = sixteenthsOf(size);
  if (sixteenths < FEET_FROM * 16) return `${sign}${fraction(sixteenths, 16)} in`;
  const feet = Math.floor(sixteenths / (12 * 16));
  const rest = sixteenths % (12 * 16);
  return `${sign}${feet} ft${rest === 0 ? '' : ` ${fraction(rest, 16)} in`}`;
}

/** Parts of an inch on a tape, below two inches and above [-]. */
const TAPE = { fine: 64, coarse: 16, fineBelow: 2 } as const;

/** The next fraction of an inch that a tape has, towards the side that is given; undefined where that is none. */
export function tapeFraction(metres: number, side: 'least' | 'most'): string | undefined {
  const inches = metres / INCH;
  const parts = inches < TAPE.fineBelow ? TAPE.fine : TAPE.coarse;
  const count = side === 'least' ? Math.ceil(inches * parts - MEANT) : Math.floor(inches * parts + MEANT);
  return count > 0 ? `${fraction(count, parts)} in` : undefined;
}

/** Hundredths of a millimetre below 1 mm, tenths below 100 mm, whole up to 1 m, then metres. */
export function formatMetricLength(metres: number): string {
  const millimetres = metres * 1000;
  const size = Math.abs(millimetres);
  if (size >= 999.5) return `${metres.toFixed(2)} m`;
  return `${millimetres.toFixed(size < 1 ? 2 : size < 99.95 ? 1 : 0)} mm`;
}

/** Beyond these, a depth is a length like any other [m]. */
const DEPTH_MOST = { inch: 10 * INCH, metric: 0.1 } as const;

/** A length of the groove as a gauge reads it: tenths of a millimetre or hundredths of an inch. */
export function formatDepth(metres: number, system: 'inch' | 'metric'): string {
  if (Math.abs(metres) >= DEPTH_MOST[system])
    return system === 'inch' ? formatInchLength(metres) : formatMetricLength(metres);
  const text = system === 'inch' ? (metres / INCH).toFixed(2) : (metres * 1000).toFixed(1);
  const signed = Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
  return `${signed} ${system === 'inch' ? 'in' : 'mm'}`;
}
