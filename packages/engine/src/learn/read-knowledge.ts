import type { Outcome } from '../issue/index.ts';
import { type Knowledge, knowledgeOf } from './knowledge.ts';
import { readTrials } from './read-trials.ts';

/**
 * Reads what a shop knows from its trials file: the one door where knowledge comes in as text.
 *
 * @param text - content of the trials file [text], at most 200 000 characters
 * @returns what the shop knows, or the issues [record]
 * @source none: composition
 * @example
 * readKnowledge('furrow_trials: 1\nshop: yard\nentries: []').value.name.trials // => 0
 */
export function readKnowledge(text: string): Outcome<Knowledge> {
  const outcome = readTrials(text);
  return outcome.ok ? { ok: true, value: knowledgeOf(outcome.value) } : outcome;
}
