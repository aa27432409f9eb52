const INCH = 0.0254;
/** From here on a tape is read in feet and inches [in]. */
const FEET_FROM = 48;
/** Below this, sizes come in sixty-fourths [in]. */
const FINE_BELOW = 1 / 4;

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

/**
 * A length as a tape or a size is read: sixteenths, sixty-fourths below a quarter, thousandths below a sixteenth; feet and
 * whole inches from four feet on.
 */
export function formatInchLength(metres: number): string {
  const size = Math.abs(metres) / INCH;
  if (size < 1 / 16) return `${(metres / INCH + 0).toFixed(3)} in`;
  const sign = metres < 0 ? '-' : '';
  if (size < FINE_BELOW) return `${sign}${fraction(Math.round(size * 64), 64)} in`;
  const sixteenths = Math.round(size * 16);
  if (sixteenths < FEET_FROM * 16) return `${sign}${fraction(sixteenths, 16)} in`;
  const inches = Math.round(size);
  const rest = inches % 12;
  return `${sign}${Math.floor(inches / 12)} ft${rest === 0 ? '' : ` ${rest} in`}`;
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
