/** Hundredths of a second below 1 s, tenths below 10 s, seconds below 1 h, then minutes. */
export function formatTime(seconds: number): string {
  const sign = seconds < 0 ? '-' : '';
  const size = Math.abs(seconds);
  if (size < 9.95) return `${(seconds + 0).toFixed(size < 0.995 ? 2 : 1)} s`;
  const whole = Math.round(size);
  if (whole < 60) return `${sign}${whole} s`;
  if (whole < 3600) return `${sign}${stepped(Math.floor(whole / 60), 'min', whole % 60, 's')}`;
  const minutes = Math.round(size / 60);
  return `${sign}${stepped(Math.floor(minutes / 60), 'h', minutes % 60, 'min')}`;
}

function stepped(large: number, largeUnit: string, small: number, smallUnit: string): string {
  return small === 0 ? `${large} ${largeUnit}` : `${large} ${largeUnit} ${small} ${smallUnit}`;
}
