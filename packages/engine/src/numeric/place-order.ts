/** Partitions after which what is left is sorted: only a sample made to defeat the choice of pivots needs more. */
const PARTITIONS_MOST = 60;

/**
 * Puts the value of one order into its place: none before it is greater, none after it is less. Much quicker than
 * sorting (C. A. R. Hoare, Algorithm 65: Find, Communications of the ACM 4 (1961) 321-322).
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
