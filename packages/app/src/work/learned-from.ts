import { type Knowledge, readKnowledge } from '@furrow/engine';

/** What was learned last: learning anew from the same trials would cost every plan its time. */
let latest: { readonly text: string; readonly knowledge: Knowledge | undefined } | undefined;

/** What a shop's trials teach; nothing where there are none, or where they cannot be read, which their own page tells. */
export function learnedFrom(text: string | undefined): Knowledge | undefined {
  if (text === undefined) return undefined;
  if (latest?.text !== text) {
    const outcome = readKnowledge(text);
    latest = { text, knowledge: outcome.ok ? outcome.value : undefined };
  }
  return latest.knowledge;
}
