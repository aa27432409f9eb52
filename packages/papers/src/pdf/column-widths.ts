/** What one column of a table asks for [pt]. */
export interface ColumnNeed {
  /** Widest word, below which words are broken. */
  readonly word: number;
  /** Widest text without its header broken into lines. */
  readonly whole: number;
  /** Share of what is left over, relative to the other columns [-]. */
  readonly weight: number;
  /** It keeps its share of the whole width, however little stands in it. */
  readonly keepsShare?: boolean;
}

/** Widths of columns that fill a width: as wide as the texts where there is room, else no narrower than their words. */
export function columnWidths(asked: readonly ColumnNeed[], width: number): number[] {
  const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);
  const weights = sum(asked.map(({ weight }) => weight));
  const needs = asked.map((need) => {
    const kept = need.keepsShare === true ? (need.weight / weights) * width : 0;
    return { ...need, word: Math.max(need.word, kept), whole: Math.max(need.whole, kept) };
  });
  const spare = width - sum(needs.map(({ whole }) => whole));
  if (spare >= 0) return needs.map(({ whole, weight }) => whole + (weight / weights) * spare);
  const widths = needs.map(({ word }) => word);
  let left = width - sum(widths);
  if (left < 0) return needs.map(({ weight }) => (weight / weights) * width);
  // what is left goes to the columns that still want more, by weight, until they have it
  for (let turn = 0; turn < needs.length && left > 0.01; turn += 1) {
    const wanting = needs.flatMap(({ whole }, index) => (whole - widths[index]! > 0.01 ? [index] : []));
    const share = left / sum(wanting.map((index) => needs[index]!.weight));
    for (const index of wanting) {
      const more = Math.min(share * needs[index]!.weight, needs[index]!.whole - widths[index]!);
      widths[index] = widths[index]! + more;
      left -= more;
    }
  }
  return widths;
}
