/** What the inner loop can do, in WebAssembly and in TypeScript alike; both work on the memory they were made for. */
export interface DiffusionRoutines {
  /** Works out the rates of the state as it is now; needed after anything but an accepted step has changed it. */
  readonly prepare: () => void;
  /** Tries a step of so long [s] with so many stages laid down; returns its error over the tolerance [-]. */
  readonly attempt: (duration: number, stages: number) => number;
  /** Takes the step tried last as done. */
  readonly accept: (stages: number) => void;
}
