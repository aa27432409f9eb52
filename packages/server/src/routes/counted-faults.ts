import type { CountedFaults, FaultCase } from '@furrow/contract';
import { countFaults, FAULT_MODEL, type FaultCounts, type FaultOutcome, type Issue } from '@furrow/engine';
import type { FoundFault } from '@furrow/store';

/** What of a case this version's table of faults does not hold; empty if it can be counted. */
export function faultCaseIssues(found: FoundFault): Issue[] {
  const outcome = countFaults(FAULT_MODEL, countsOf(found));
  return outcome.ok ? [] : [...outcome.issues];
}

/** Counts of all cases together. A case of another version's table is kept, but cannot be counted. */
export function countedFaults(all: readonly FoundFault[]): CountedFaults {
  const counted: CountedFaults = { cases: 0, found: {}, seen: {} };
  for (const found of all) {
    if (faultCaseIssues(found).length > 0) continue;
    const { cause } = found;
    counted.cases += 1;
    counted.found[cause] = (counted.found[cause] ?? 0) + 1;
    counted.seen[cause] ??= {};
    const rows = counted.seen[cause];
    for (const [observable, outcome] of known(found)) {
      rows[observable] ??= {};
      const row = rows[observable];
      row[outcome] = (row[outcome] ?? 0) + 1;
    }
  }
  return counted;
}

function countsOf(found: FoundFault): FaultCounts {
  const rows = Object.fromEntries(
    known(found).map(([observable, outcome]) => [observable, { [outcome]: 1 }]),
  );
  return { found: { [found.cause]: 1 }, seen: { [found.cause]: rows } };
}

function known({ symptoms }: FoundFault): [string, FaultOutcome][] {
  // What is no outcome at all is told of by the table's own check.
  const entries = Object.entries(symptoms) as [string, FaultCase['symptoms'][string]][];
  return entries.flatMap(([observable, outcome]) => (outcome === 'unknown' ? [] : [[observable, outcome]]));
}
