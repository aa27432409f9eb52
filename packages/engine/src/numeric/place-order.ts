/** Partitions after which what is left is sorted: only a sample made to defeat the choice of pivots needs more. */
const PARTITIONS_MOST = 60;

/**
 * Puts the value of one order into its place: none before it is greater, none after it is less. Much quicker than
 * sorting. The values are put into another order on the way.
 *
 * @param values - the values [list], none of them NaN
 * @param order - index whose value is wanted, in rising order [-], from `first` to `last`
 * @param first - first index of the stretch that is ordered [-], from 0
 * @param last - last index of it [-], below the length
 * @returns nothing: the value then stands at its index [none]
 * @source C. A. R. Hoare, Algorithm 65: Find, Communications of the ACM 4 (1961) 321-322
 * @example
 * const values = Float64Array.of(5, 1, 4, 2, 3);
 * placeOrder(values, 2, 0, 4);
 * values[2] // => 3
 */
export function placeOrder(values: Float64Array, order: number, first: number, last: number): void {
  let low = first;
  let high = last;
  for (let partitions = 0; low < high; partitions += 1) {
    if (partitions === PARTITIONS_MOST) {
      values.subarray(low, high + 1).sort();
      return;
    }
    const pivot = values[order]!;
    let up = low;
    let down = high;
    while (up <= down) {
      while (values[up]! < pivot) up += 1;
      while (pivot < values[down]!) down -= 1;
      if (up <= down) {
        const kept = values[up]!;
        values[up] = values[down]!;
        values[down] = kept;
        up += 1;
        down -= 1;
      }
    }
    if (down < order) low = up;
    if (order < up) high = down;
  }
}
