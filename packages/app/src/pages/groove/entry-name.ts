const two = (value: number): string => String(value).padStart(2, '0');

/** Name under which the groove of a job stands among the shop's trials: the same each time, so that it counts once. */
export function entryName(id: string | undefined): string {
  return `groove-${(id ?? 'unsaved').slice(0, 18)}`;
}

/** Day of the work: as written where that is a day, else the day on the clock [ISO date]. */
export function dayOf(written: string | undefined, now: Date): string {
  return /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/u.test(written ?? '')
    ? written!
    : `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Day and time on the clock, as a record has it. */
export function timeOf(now: Date): string {
  return `${dayOf(undefined, now)} ${two(now.getHours())}:${two(now.getMinutes())}`;
}
