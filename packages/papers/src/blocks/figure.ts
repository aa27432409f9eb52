/** One value with its label. */
export interface Figure {
  readonly label: string;
  readonly value: string;
  /** Unit, set smaller than the value. */
  readonly unit?: string;
  /** What the reader must know beside the value. */
  readonly note?: string;
}

/** A shown amount as value and unit: `3/8` and `in`; an angle keeps its sign. */
export function valueAndUnit(amount: string): { value: string; unit?: string } {
  const match = /^([\d\s./−–-]+?)\s(\D+)$/u.exec(amount);
  return match === null ? { value: amount } : { value: match[1]!, unit: match[2]! };
}
