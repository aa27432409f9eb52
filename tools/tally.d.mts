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

/** Tests passed, failed and skipped; what failed outside of any test counts as failed. */
export function tally(
  report: TestReport | undefined,
  exitStatus: number | null,
): { passed: number; failed: number; skipped: number };
