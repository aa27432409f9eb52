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

/**
 * Names the checks that are worth making next, the one that tells most per minute first.
 *
 * Worth is the mutual information between the cause and the outcome of the check, after what was seen so far, over the
 * minutes the check takes. Symptoms are not proposed: they are what the run showed.
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
  return { ok: true, value: worths.sort((a, b) => b.information_bit_per_min - a.information_bit_per_min) };
}
