/** One error to plant, and the tests that ought to notice it. */
export interface PlantedMutant {
  readonly what: string;
  readonly file: string;
  /** Stands in the file exactly once. */
  readonly find: string;
  readonly plant: string;
  readonly tests: readonly string[];
}

/** Errors planted one at a time between a computed number and its reader. */
export const MUTANTS: readonly PlantedMutant[];
