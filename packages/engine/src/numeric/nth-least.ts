/** A copy of the list asked about last, so that none is made anew for every question. */
let scratch = new Float64Array(0);

/**
 * The value that so many others of a list lie below or at, without sorting all of it.
 *
 * @param values - the list [list], any order, not changed
 * @param place - how many lie below or at it [-], a whole number from 0 to the length less 1
 * @returns that value [-]
 * @source Hoare's selection (Find, algorithm 65)
 * @example
 * nthLeast(Float64Array.of(3, 1, 2), 1) // => 2
 */
export function nthLeast(values: Float64Array, place: number): number {
  if (scratch.length < values.length) scratch = new Float64Array(values.length);
  scratch.set(values);
  let [low, high] = [0, values.length - 1];
  while (low < high) {
    const pivot = scratch[(low + high) >> 1]!;
    let [up, down] = [low, high];
    while (up <= down) {
      while (scratch[up]! < pivot) up += 1;
      while (scratch[down]! > pivot) down -= 1;
      if (up > down) break;
      const kept = scratch[up]!;
      scratch[up] = scratch[down]!;
      scratch[down] = kept;
      up += 1;
      down -= 1;
    }
    if (place <= down) high = down;
    else if (place >= up) low = up;
    else break;
  }
  return scratch[place]!;
}
