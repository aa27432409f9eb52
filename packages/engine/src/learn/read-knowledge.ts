import { topField } from '../document/index.ts';
import type { Outcome } from '../issue/index.ts';
import { knowledgeOf, learnFrom } from './knowledge.ts';
import { type ReadSummary, readSummary } from './read-summary.ts';
import { type ReadTrials, readTrials } from './read-trials.ts';
import type { Knowledge } from './shop-knowledge.ts';

/** Name of a shop that knows others' work and has none of its own. */
const NEW_SHOP = 'new-shop';

/** A file of what is known: trials of a shop, or what shops have learned. */
export type KnowledgeFile =
  | { readonly is: 'trials'; readonly read: ReadTrials }
  | { readonly is: 'summary'; readonly read: ReadSummary };

/**
 * Reads a file of what is known: trials, or a summary.
 *
 * @param text - content of the file [text], at most 200 000 characters
 * @returns what it is and what it says, or the issues [record]
 * @source none: composition
 * @example
 * readKnowledgeFile('furrow_trials: 1\nshop: yard\nentries: []').value.is // => "trials"
 */
export function readKnowledgeFile(text: string): Outcome<KnowledgeFile> {
  if (topField(text, 'furrow_summary') !== undefined) {
    const outcome = readSummary(text);
    return outcome.ok ? { ok: true, value: { is: 'summary', read: outcome.value } } : outcome;
  }
  const outcome = readTrials(text);
  return outcome.ok ? { ok: true, value: { is: 'trials', read: outcome.value } } : outcome;
}

/**
 * What a shop knows from its trials and from summaries that other shops gave it.
 *
 * Without trials, the one shop of a summary is the shop itself; of several shops it is a new one, which borrows from all.
 *
 * @param trials - the shop's trials [record], from `readTrials`, or undefined
 * @param summary - what shops have learned [record], from `readSummary`, or undefined
 * @returns what the shop knows, or undefined where there is neither [record]
 * @source none: composition
 * @example
 * knowledgeFrom(undefined, undefined) // => undefined
 */
export function knowledgeFrom(
  trials: ReadTrials | undefined,
  summary: ReadSummary | undefined,
): Knowledge | undefined {
  if (summary === undefined) return trials === undefined ? undefined : knowledgeOf(trials);
  const { shops, revision } = summary;
  const short = revision.slice(0, 12);
  if (trials === undefined) {
    const shop = shops.length === 1 ? shops[0]!.shop : NEW_SHOP;
    return learnFrom({ shop, id: `${shop}-${short}`, observations: [], others: shops });
  }
  return learnFrom({
    shop: trials.trials.shop,
    id: `${trials.trials.shop}-${trials.revision.slice(0, 12)}+${short}`,
    observations: trials.observations,
    ...(trials.trials.invented === 'yes' && { invented: true }),
    others: shops,
  });
}

/**
 * Reads what a shop knows from the text of one file: the one door where knowledge comes in as text.
 *
 * @param text - content of a trials file or a summary [text], at most 200 000 characters
 * @returns what the shop knows, or the issues [record]
 * @source none: composition
 * @example
 * readKnowledge('furrow_trials: 1\nshop: yard\nentries: []').value.name.trials // => 0
 */
export function readKnowledge(text: string): Outcome<Knowledge> {
  const file = readKnowledgeFile(text);
  if (!file.ok) return file;
  const { is, read } = file.value;
  return {
    ok: true,
    value: is === 'trials' ? knowledgeOf(read) : knowledgeFrom(undefined, read)!,
  };
}
