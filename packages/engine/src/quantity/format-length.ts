const INCH = 0.0254;
const SIXTEENTHS_PER_FOOT = 192;

/** Whole sixteenths as inches: 22 -> `1 3/8`. */
function inches(sixteenths: number): string {
  const whole = Math.floor(sixteenths / 16);
  let top = sixteenths % 16;
  if (top === 0) return String(whole);
  let bottom = 16;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

/** Nearest sixteenth; thousandths below a sixteenth; feet and inches from ten feet on. */
export function formatInchLength(metres: number): string {
  const size = Math.abs(metres) / INCH;
  if (size < 1 / 16) return `${(metres / INCH + 0).toFixed(3)} in`;
  const sign = metres < 0 ? '-' : '';
  const sixteenths = Math.round(size * 16);
  if (sixteenths < 10 * SIXTEENTHS_PER_FOOT) return `${sign}${inches(sixteenths)} in`;
  const feet = Math.floor(sixteenths / SIXTEENTHS_PER_FOOT);
  const rest = sixteenths % SIXTEENTHS_PER_FOOT;
  return `${sign}${feet} ft${rest === 0 ? '' : ` ${inches(rest)} in`}`;
}

/** Hundredths of a millimetre below 1 mm, tenths below 100 mm, whole up to 1 m, then metres. */
export function formatMetricLength(metres: number): string {
  const millimetres = metres * 1000;
  const size = Math.abs(millimetres);
  if (size >= 999.5) return `${metres.toFixed(2)} m`;
  return `${millimetres.toFixed(size < 1 ? 2 : size < 99.95 ? 1 : 0)} mm`;
}
