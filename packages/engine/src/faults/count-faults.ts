import type { Issue, Outcome } from '../issue/index.ts';
import type { FaultCause, FaultModel, FaultObservable, FaultOutcome, OutcomeChance } from './model.ts';
import { chanceIn, outcomesOf, priorOf } from './outcome-chance.ts';

/** What a shop has counted: how often each cause was found, and what was seen with it. */
export interface FaultCounts {
  /** Cases by identifier of the cause [-]. */
  readonly found: Readonly<Record<string, number>>;
  /** Cases by cause, observable and outcome [-]. */
  readonly seen: Readonly<
    Record<string, Readonly<Record<string, Readonly<Partial<Record<FaultOutcome, number>>>>>>
  >;
}

function refused(path: string, message: string, read: string): Issue {
  return { code: 'FAULT_EVIDENCE', message, path, read };
}

function countIssues(path: string, count: number): Issue[] {
  if (Number.isFinite(count) && count >= 0) return [];
  return [refused(path, `A count is a number from 0 on, but ${count} stands here.`, String(count))];
}

function issuesOf(model: FaultModel, counts: FaultCounts): Issue[] {
  const causes = new Set(model.causes.map(({ id }) => id));
  const observables = new Map(model.observables.map((observable) => [observable.id, observable]));
  const causeIssues = (path: string, id: string): Issue[] =>
    causes.has(id) ? [] : [refused(path, `No cause is called "${id}".`, id)];
  return [
    ...Object.entries(counts.found).flatMap(([id, count]) => [
      ...causeIssues(`found.${id}`, id),
      ...countIssues(`found.${id}`, count),
    ]),
    ...Object.entries(counts.seen).flatMap(([cause, rows]) => [
      ...causeIssues(`seen.${cause}`, cause),
      ...Object.entries(rows).flatMap(([id, row]) => {
        const observable = observables.get(id);
        const path = `seen.${cause}.${id}`;
        if (!observable) return [refused(path, `No symptom, inspection or reading is called "${id}".`, id)];
        return Object.entries(row).flatMap(([outcome, count]) => {
          const place = `${path}.${outcome}`;
          if (!outcomesOf(observable).some((known) => known === outcome))
            return [refused(place, `"${outcome}" is no outcome of "${id}".`, outcome)];
          return countIssues(place, count);
        });
      }),
    ]),
  ];
}

type OutcomeCounts = Readonly<Partial<Record<FaultOutcome, number>>>;

/** Mean of the Beta or Dirichlet posterior of one row. */
function counted(
  observable: FaultObservable,
  stated: OutcomeChance,
  row: OutcomeCounts,
  cases: number,
): OutcomeChance {
  const total = outcomesOf(observable).reduce((sum, outcome) => sum + (row[outcome] ?? 0), cases);
  const share = (outcome: FaultOutcome): number =>
    (cases * chanceIn(stated, outcome) + (row[outcome] ?? 0)) / total;
  return 'yes' in stated ? { yes: share('yes') } : { low: share('low'), high: share('high') };
}

function countedCause(model: FaultModel, cause: FaultCause, counts: FaultCounts, prior: number): FaultCause {
  const rows = counts.seen[cause.id] ?? {};
  const shows: Record<string, OutcomeChance> = { ...cause.shows };
  for (const observable of model.observables) {
    const row = rows[observable.id];
    if (row === undefined) continue;
    const stated = cause.shows[observable.id] ?? observable.otherwise;
    shows[observable.id] = counted(observable, stated, row, model.chance_cases);
  }
  const weight = model.weight_cases * prior + (counts.found[cause.id] ?? 0);
  return { ...cause, weight, shows };
}

/**
 * Moves a table of faults by what a shop has counted.
 *
 * Weights are the mean of a Dirichlet posterior whose prior counts as `weight_cases` cases; each row of chances that of
 * a Beta or Dirichlet posterior whose prior counts as `chance_cases`. Chances stay above 0 and below 1. Give all counts
 * at once, to the table they belong to: a table already moved by some counts must not be given them again.
 *
 * @param model - the table before any count [record], one that checkFaultModel accepts
 * @param counts - cases found and what was seen with them [record], counts >= 0 under names of the table
 * @returns the table moved, or which counts cannot be understood [record]
 * @source conjugate update of Beta and Dirichlet distributions (textbook, memory)
 * @example
 * const moved = countFaults(FAULT_MODEL, { found: { wet_air: 40 }, seen: {} }).value;
 * rankFaults(moved, {}).value[0].cause // => "wet_air"
 */
export function countFaults(model: FaultModel, counts: FaultCounts): Outcome<FaultModel> {
  const issues = issuesOf(model, counts);
  if (issues.length > 0) return { ok: false, issues };
  const prior = priorOf(model.causes);
  const causes = model.causes.map((cause, index) => countedCause(model, cause, counts, prior[index]!));
  return { ok: true, value: { ...model, causes } };
}
