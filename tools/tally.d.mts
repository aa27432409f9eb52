/** The part of vitest's JSON report that is counted. */
export interface TestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
  readonly testResults: readonly {
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
}

/** How the tests of a run ended. */
export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

/** Tests passed, failed and skipped; what failed outside of any test counts as failed. */
export function tally(report: TestReport | undefined, exitStatus: number | null): Counts;

/** Counts of several runs, taken together. */
export function addCounts(counts: readonly Counts[]): Counts;
