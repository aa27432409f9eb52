/** Hundredths of a second below 0.1 s, tenths below 10 s, seconds below 10 min, whole minutes from there on. */
export function formatTime(seconds: number): string {
  const sign = seconds < 0 ? '-' : '';
  const size = Math.abs(seconds);
  if (size < 9.95) return `${(seconds + 0).toFixed(size > 0 && size < 0.095 ? 2 : 1)} s`;
  const whole = Math.round(size);
  if (whole < 60) return `${sign}${whole} s`;
  if (whole < 600) return `${sign}${stepped(Math.floor(whole / 60), 'min', whole % 60, 's')}`;
  const minutes = Math.round(size / 60);
  if (minutes < 60) return `${sign}${minutes} min`;
  return `${sign}${stepped(Math.floor(minutes / 60), 'h', minutes % 60, 'min')}`;
}

function stepped(large: number, largeUnit: string, small: number, smallUnit: string): string {
  return small === 0 ? `${large} ${largeUnit}` : `${large} ${largeUnit} ${small} ${smallUnit}`;
}
