import { formatBound, type QuantityKind } from '../quantity/index.ts';

/**
 * The amount from which on, or up to which, a job is freed, in both systems of units: a change of the kit or the drawing is
 * read by both. Each is rounded to the side that eases, so that what is told frees the job when it is entered.
 */
export function bothSystems(value: number, kind: QuantityKind, side: 'least' | 'most'): string {
  return `${formatBound(value, kind, 'metric', side)} (${formatBound(value, kind, 'inch', side)})`;
}

/** Even steps up from a value. */
export function evenly(from: number, step: number, count: number): number[] {
  return Array.from({ length: count }, (_, index) => written(from + step * (index + 1)));
}

/** Twenty even steps down from a value to nothing. */
export function downToNothing(from: number): number[] {
  return Array.from({ length: 20 }, (_, index) => written((from * (19 - index)) / 20));
}

/** A value without the last digits, which only come from the units. */
export function written(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
