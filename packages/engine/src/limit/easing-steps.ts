/**
 * Even steps up from a value, for the changes of an easing.
 *
 * @param from - the value as it is [any unit], finite
 * @param step - size of a step [the same unit], > 0
 * @param count - steps [-], >= 0
 * @returns the values, the least change first [list]
 * @source none: bookkeeping
 * @example
 * evenly(10, 0.5, 3) // => [10.5,11,11.5]
 */
export function evenly(from: number, step: number, count: number): number[] {
  return Array.from({ length: Math.max(0, count) }, (_, index) => written(from + step * (index + 1)));
}

/**
 * Twenty even steps down from a value to nothing, for the changes of an easing.
 *
 * @param from - the value as it is [any unit], finite
 * @returns the values, the least change first [list]
 * @source none: bookkeeping
 * @example
 * downToNothing(20)[0] // => 19
 */
export function downToNothing(from: number): number[] {
  return Array.from({ length: 20 }, (_, index) => written((from * (19 - index)) / 20));
}

/**
 * A value without the last digits, which only come from the units.
 *
 * @param value - the value [any unit], finite
 * @returns the value to a millionth [the same unit]
 * @source none: bookkeeping
 * @example
 * written(0.1 + 0.2) // => 0.3
 */
export function written(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
