/** Where a command writes: results, and what stands in their way. */
export interface Streams {
  readonly print: (text: string) => void;
  readonly problem: (lines: readonly string[]) => void;
}
