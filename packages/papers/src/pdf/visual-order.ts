import type { TextItem } from './text-items.ts';

/** An item in the order it is painted from left to right. */
export interface PlacedItem extends TextItem {
  /** Even: left to right; odd: right to left [-]. */
  readonly level: number;
}

/**
 * Puts the items of one line into the order of painting.
 *
 * The part of the Unicode bidirectional algorithm that words need: neutral items take the direction of equal
 * neighbours, else that of the text; then runs are reversed from the highest level down (rule L2).
 */
export function visualOrder(line: readonly TextItem[], base: 'ltr' | 'rtl'): PlacedItem[] {
  const directions = line.map((item) => item.direction);
  for (let index = 0; index < directions.length; index += 1) {
    if (directions[index] !== 'neutral') continue;
    let end = index;
    while (end < directions.length && directions[end] === 'neutral') end += 1;
    const before = directions[index - 1] ?? base;
    const after = directions[end] ?? base;
    directions.fill(before === after ? before : base, index, end);
  }
  const level = (direction: string | undefined): number => (direction === 'rtl' ? 1 : base === 'rtl' ? 2 : 0);
  const placed = line.map((item, index) => ({ ...item, level: level(directions[index]) }));
  for (let limit = 2; limit >= 1; limit -= 1) {
    for (let index = 0; index < placed.length; index += 1) {
      if (placed[index]!.level < limit) continue;
      let end = index;
      while (end < placed.length && placed[end]!.level >= limit) end += 1;
      placed.splice(index, end - index, ...placed.slice(index, end).reverse());
      index = end;
    }
  }
  return placed;
}
