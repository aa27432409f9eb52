import type { RunExpectation, RunOutcome } from '../../run/index.ts';

/** Electrode burnt: as the feed tells, else from the charge and the usual wear [m]. */
export function electrodeUsed(
  { totals }: RunOutcome,
  expected: RunExpectation | undefined,
): number | undefined {
  if (totals.fed !== undefined) return totals.fed;
  if (totals.charge === undefined || expected === undefined) return undefined;
  return totals.charge * expected.wear;
}

/** Electrode that the passes run were planned to burn [m]. */
export function electrodePlanned({ passes }: RunOutcome, expected: RunExpectation): number {
  const run = new Set(passes.map(({ planned }) => planned));
  return expected.passes
    .filter(({ number }) => run.has(number))
    .reduce(
      (sum, { from, to, travel, dwell }) =>
        sum + expected.wear * expected.current * ((to - from) / travel + dwell),
      0,
    );
}
