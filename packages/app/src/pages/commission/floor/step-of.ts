import type { CommissionCheck, RoundDepth } from '@furrow/engine';

/** A reading that was saved, with when. */
interface SavedReading {
  readonly text: string;
  readonly at: string;
}

/** Whether what stands at a check was read too long ago for this round: every day asks for a reading of the day. */
export function isOfEarlierDay(
  depth: RoundDepth,
  saved: SavedReading | undefined,
  text: string,
  today: string,
): boolean {
  return depth === 'daily' && saved !== undefined && saved.text === text && dayOf(saved.at) < today;
}

/** The day of a time, where this tablet is [ISO date]. */
export function dayOf(time: string): string {
  const at = new Date(time);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** Number of the step to show: the one that was left, else the first that is not made, else the first. */
export function stepOf(
  checks: readonly Pick<CommissionCheck, 'id'>[],
  left: string | undefined,
  made: (check: string) => boolean,
): number {
  if (left === 'end') return checks.length;
  const at = checks.findIndex(({ id }) => id === left);
  if (at >= 0) return at;
  return Math.max(
    0,
    checks.findIndex(({ id }) => !made(id)),
  );
}
