/**
 * Counts tests from vitest's JSON report. A file that could not even be loaded holds no test, and an error outside
 * of any test fails none: both would pass unseen, so each counts as one failure.
 */
export function tally(report, exitStatus) {
  if (!report) return { passed: 0, failed: 1, skipped: 0 };
  const unloaded = report.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((result) => result.status === 'failed'),
  ).length;
  const failed = report.numFailedTests + unloaded;
  return {
    passed: report.numPassedTests,
    failed: failed === 0 && exitStatus !== 0 ? 1 : failed,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

/** Counts of several runs, taken together. */
export function addCounts(counts) {
  const sum = (key) => counts.reduce((total, count) => total + count[key], 0);
  return { passed: sum('passed'), failed: sum('failed'), skipped: sum('skipped') };
}
