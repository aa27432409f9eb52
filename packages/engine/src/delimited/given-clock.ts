import type { DateOrder } from './moment-cell.ts';

/** What a clock counts, where the file does not say it well enough. */
export const CLOCK_COUNTS = ['elapsed', 'time_of_day', 'rows'] as const;

/** What a person says of the clock of a log. */
export interface GivenClock {
  /**
   * elapsed: time since the logger was started; time_of_day: it begins anew at midnight; rows: the column of time is left
   * aside, and a row comes every `interval`.
   */
  readonly counts?: (typeof CLOCK_COUNTS)[number] | undefined;
  /** Zone of dates and times that are written without one [s east of Greenwich]. */
  readonly zone?: number | undefined;
  /** In which order day, month and year stand in dates. */
  readonly dateOrder?: DateOrder | undefined;
  /** Time between two rows of a log without a clock [s]. */
  readonly interval?: number | undefined;
}

const ZONE = /^(?:z|utc|gmt|(?:utc|gmt)?([+-])(\d{1,2})(?::?(\d{2}))?)$/iu;

/**
 * Reads a zone of the clock.
 *
 * @param written - the zone as written [text], such as +01:00, -0530, GMT+2 or UTC
 * @returns its offset [s], positive east of Greenwich, at most 14 h and 59 min either way; undefined where it is none
 * @source ISO 8601-1, time shift
 * @example
 * zoneOf('+01:00') // => 3600
 */
export function zoneOf(written: string): number | undefined {
  const found = ZONE.exec(written.trim());
  if (found === null) return undefined;
  const [, sign = '+', hours = '0', minutes = '0'] = found;
  if (Number(hours) > 14 || Number(minutes) > 59) return undefined;
  const seconds = 3600 * Number(hours) + 60 * Number(minutes);
  return sign === '-' && seconds > 0 ? -seconds : seconds;
}

/**
 * A zone of the clock as it is written.
 *
 * @param zone - offset [s], positive east of Greenwich, below 15 h either way
 * @returns the zone [text], to the minute
 * @source ISO 8601-1, time shift
 * @example
 * zoneWord(-19800) // => "-05:30"
 */
export function zoneWord(zone: number): string {
  const minutes = Math.round(Math.abs(zone) / 60);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${zone < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
