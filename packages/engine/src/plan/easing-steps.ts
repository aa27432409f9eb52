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
