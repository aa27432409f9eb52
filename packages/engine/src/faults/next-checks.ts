import type { Outcome } from '../issue/index.ts';
import type { FaultEvidence, FaultModel, FaultObservable } from './model.ts';
import { chanceUnder, outcomesOf } from './outcome-chance.ts';
import { posteriorOf } from './posterior.ts';
import { readEvidence } from './read-evidence.ts';

/** A check not yet made, and what it is worth. */
export interface NextFaultCheck {
  /** Identifier of the inspection or reading. */
  readonly check: string;
  readonly title: string;
  /** What to do. */
  readonly ask: string;
  /** Time it takes [min]. */
  readonly minutes: number;
  /** Expected information about the cause [bit]. */
  readonly information_bit: number;
  /** Expected information per time [bit/min]. */
  readonly information_bit_per_min: number;
}

/** From this probability on the leading cause is confirmed before anything else is looked at; judgement, no source [-]. */
const CONFIRM_FROM = 0.8;
/** A check confirms a cause when it makes what the check then mostly shows this many times likelier than the others do [-]. */
const CONFIRMS_FROM = 3;

function surprise(probability: number): number {
  return probability > 0 ? -probability * Math.log2(probability) : 0;
}

/** Mutual information between the cause and the outcome of a check: entropy of the outcome less what noise leaves of it. */
function informationOf(model: FaultModel, posterior: readonly number[], observable: FaultObservable): number {
  let information = 0;
  for (const outcome of outcomesOf(observable)) {
    let overall = 0;
    let noise = 0;
    for (const [index, cause] of model.causes.entries()) {
      const chance = chanceUnder(cause, observable, outcome);
      overall += posterior[index]! * chance;
      noise += posterior[index]! * surprise(chance);
    }
    information += surprise(overall) - noise;
  }
  return Math.max(0, information);
}

/** How many times likelier the leading cause makes what it mostly shows in a check than the other causes together; 0 where it mostly shows nothing of its own. */
function confirmationBy(
  model: FaultModel,
  posterior: readonly number[],
  leader: number,
  observable: FaultObservable,
): number {
  const cause = model.causes[leader]!;
  const others = 1 - posterior[leader]!;
  return Math.max(
    0,
    ...outcomesOf(observable).map((outcome) => {
      const own = chanceUnder(cause, observable, outcome);
      if (own < 0.5) return 0;
      const rest = model.causes.reduce(
        (sum, each, index) =>
          index === leader ? sum : sum + posterior[index]! * chanceUnder(each, observable, outcome),
        0,
      );
      return others > 0 ? own / (rest / others) : 0;
    }),
  );
}

/**
 * Names the checks that are worth making next, the one that tells most per minute first.
 *
 * Worth is the mutual information between the cause and the outcome of the check, after what was seen so far, over the
 * minutes the check takes. Symptoms are not proposed: they are what the run showed. From a probability of 80 % on, the
 * check that confirms the leading cause best comes first.
 *
 * @param model - the table of faults [record], one that checkFaultModel accepts
 * @param evidence - what was seen so far [record], names of the table
 * @returns inspections and readings not yet made, the best first, or which evidence cannot be understood [list]
 * @source Shannon, Bell System Technical Journal 27 (1948) 379-423 (memory); chances and minutes: judgement, no source
 * @example
 * nextFaultChecks(FAULT_MODEL, { shallow_start: 'yes' }).value[0].check // => "start_dwell"
 */
export function nextFaultChecks(
  model: FaultModel,
  evidence: FaultEvidence,
): Outcome<readonly NextFaultCheck[]> {
  const read = readEvidence(model, evidence);
  if (!read.ok) return read;
  const posterior = posteriorOf(model, read.value);
  const made = new Set(read.value.map(({ observable }) => observable.id));
  const open = model.observables.filter(({ id, kind }) => kind !== 'symptom' && !made.has(id));
  const worths = open.map((observable): NextFaultCheck => {
    const { id, title, ask, minutes } = observable;
    const information = informationOf(model, posterior, observable);
    return {
      check: id,
      title,
      ask,
      minutes,
      information_bit: information,
      information_bit_per_min: information / minutes,
    };
  });
  const byWorth = worths.sort((a, b) => b.information_bit_per_min - a.information_bit_per_min);
  const leader = posterior.indexOf(Math.max(...posterior));
  if (posterior[leader]! < CONFIRM_FROM) return { ok: true, value: byWorth };
  const confirming = open
    .map((observable) => ({
      id: observable.id,
      times: confirmationBy(model, posterior, leader, observable),
    }))
    .reduce((best, each) => (each.times > best.times ? each : best), { id: '', times: CONFIRMS_FROM });
  const isFirst = ({ check }: NextFaultCheck): boolean => check === confirming.id;
  return { ok: true, value: [...byWorth.filter(isFirst), ...byWorth.filter((each) => !isFirst(each))] };
}
