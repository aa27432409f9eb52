/** A unit of time that keeps an axis readable, and how many seconds it has. */
interface TimeScale {
  readonly unit: 's' | 'min' | 'h';
  /** One unit [s]. */
  readonly seconds: number;
}

/** The unit of time for a course of this length. */
export function timeScale(seconds: number): TimeScale {
  if (seconds > 3 * 3600) return { unit: 'h', seconds: 3600 };
  return seconds > 180 ? { unit: 'min', seconds: 60 } : { unit: 's', seconds: 1 };
}
