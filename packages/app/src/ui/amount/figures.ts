/** At most four figures, without an exponent. */
export function figures(value: number): string {
  if (Math.abs(value) >= 1000) return Math.round(value).toLocaleString('en-US').replaceAll(',', '\u202f');
  return String(Number(value.toPrecision(Math.abs(value) < 1 ? 2 : 3)));
}
