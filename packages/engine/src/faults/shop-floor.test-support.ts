import { type DrawStream, drawStream } from '../numeric/index.ts';
import type { FaultEvidence, FaultModel, FaultOutcome, OutcomeChance } from './model.ts';
import { nextFaultChecks } from './next-checks.ts';
import { rankFaults } from './rank-faults.ts';

/**
 * A simulated shop floor: draws a cause, and answers what is asked about it. It reads the rows of the table on its
 * own, without the ranking's code; with `misjudged` above 0 its true chances differ from the table's, by a normal
 * draw of that standard deviation on the logarithm of each, afresh for every fault.
 */
export interface ShopFloor {
  readonly cause: string;
  answer(id: string): FaultOutcome;
}

/** How the next check is chosen. */
export type CheckChoice = 'best' | 'random';

/** What a run over many simulated faults came to. */
export interface Tally {
  /** Share of the faults whose cause ranks first at the end [-]. */
  readonly first: number;
  /** Mean time of the checks [min]. */
  readonly minutes: number;
  /** Mean number of checks [-]. */
  readonly checks: number;
}

/** Share of the symptoms that the operator can answer [-]. */
const SYMPTOM_KNOWN = 0.9;
/** Answers that are a complaint. */
const COMPLAINTS: ReadonlySet<FaultOutcome> = new Set(['yes', 'low', 'high']);
/** Symptoms that tell when the trouble came, not that there is any. */
const HISTORY: ReadonlySet<string> = new Set([
  'from_first_arc',
  'after_electrode_change',
  'worsens_with_time',
]);

function drawOne(stream: DrawStream, chances: readonly number[]): number {
  let left = stream.uniform() * chances.reduce((sum, chance) => sum + chance, 0);
  for (const [index, chance] of chances.entries()) {
    left -= chance;
    if (left < 0) return index;
  }
  return chances.length - 1;
}

function moved(stream: DrawStream, chances: readonly number[], misjudged: number): number[] {
  const raised = chances.map((chance) => chance * Math.exp(misjudged * stream.normal()));
  const total = raised.reduce((sum, chance) => sum + chance, 0);
  return raised.map((chance) => chance / total);
}

function asList(row: OutcomeChance): [FaultOutcome[], number[]] {
  if ('yes' in row)
    return [
      ['yes', 'no'],
      [row.yes, 1 - row.yes],
    ];
  return [
    ['low', 'in', 'high'],
    [row.low, 1 - row.low - row.high, row.high],
  ];
}

/** One fault with everything it would show, drawn once. */
function drawFault(model: FaultModel, stream: DrawStream, misjudged = 0): ShopFloor {
  const cause =
    model.causes[
      drawOne(
        stream,
        model.causes.map(({ weight }) => weight),
      )
    ]!;
  const shown = new Map<string, FaultOutcome>();
  for (const observable of model.observables) {
    const [names, chances] = asList(cause.shows[observable.id] ?? observable.otherwise);
    shown.set(observable.id, names[drawOne(stream, moved(stream, chances, misjudged))]!);
  }
  return { cause: cause.id, answer: (id) => shown.get(id)! };
}

function mustHold<T>(outcome: { ok: true; value: T } | { ok: false }): T {
  if (!outcome.ok) throw new Error('the simulated evidence was refused');
  return outcome.value;
}

/** What the operator reports at first: each symptom, unless it was not looked for. */
function firstReport(model: FaultModel, floor: ShopFloor, stream: DrawStream): Record<string, FaultOutcome> {
  const report: Record<string, FaultOutcome> = {};
  for (const { id, kind } of model.observables) {
    if (kind === 'symptom' && stream.uniform() < SYMPTOM_KNOWN) report[id] = floor.answer(id);
  }
  return report;
}

/** A fault that was noticed: without a complaint about arc or groove nobody looks for a cause. */
function drawCase(model: FaultModel, stream: DrawStream, misjudged: number) {
  for (;;) {
    const floor = drawFault(model, stream, misjudged);
    const report = firstReport(model, floor, stream);
    if (Object.entries(report).some(([id, outcome]) => COMPLAINTS.has(outcome) && !HISTORY.has(id)))
      return { floor, report };
  }
}

function chooseCheck(model: FaultModel, evidence: FaultEvidence, choice: CheckChoice, stream: DrawStream) {
  const open = mustHold(nextFaultChecks(model, evidence));
  return choice === 'best' ? open[0]! : open[Math.floor(stream.uniform() * open.length)]!;
}

/** Runs `faults` simulated faults with `checks` checks each; the faults of a seed are the same for both choices. */
export function tallyFaults(
  model: FaultModel,
  choice: CheckChoice,
  {
    faults,
    checks,
    seed,
    misjudged = 0,
  }: { faults: number; checks: number; seed: number; misjudged?: number },
): Tally {
  let first = 0;
  let minutes = 0;
  for (let number = 0; number < faults; number += 1) {
    const stream = drawStream(seed + number);
    const { floor, report } = drawCase(model, stream, misjudged);
    const evidence: Record<string, FaultOutcome> = { ...report };
    for (let made = 0; made < checks; made += 1) {
      const next = chooseCheck(model, evidence, choice, stream);
      evidence[next.check] = floor.answer(next.check);
      minutes += next.minutes;
    }
    if (mustHold(rankFaults(model, evidence))[0]!.cause === floor.cause) first += 1;
  }
  return { first: first / faults, minutes: minutes / faults, checks };
}
