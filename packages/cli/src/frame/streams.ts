/** Where a command writes: results, and what stands in their way. */
export interface Streams {
  readonly print: (text: string) => void;
  readonly problem: (lines: readonly string[]) => void;
  /** How far a long run is, on a line that the next one replaces and an empty one clears; only where somebody watches. */
  readonly progress?: ((text: string) => void) | undefined;
}
