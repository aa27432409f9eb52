import { freeId, newEntries, newTrials, withEntry, writtenEntries } from '@furrow/engine';
import { z } from 'zod';
import { draftOf } from '../../sheet/keep/index.ts';

/** Under what name trials that are not saved yet are kept in the browser. */
export const TRIALS_DRAFT = 'trials';

/** Trials with entries that are not saved yet, and what they were made from. */
export interface KeptTrials {
  readonly text: string;
  readonly base: string;
  readonly based_on: number;
}

const draftSchema = z.object({ mine: z.string(), base: z.string() });

/** What is kept of them, so that a reload loses nothing. */
export function trialsDraftText({ text, base }: Pick<KeptTrials, 'text' | 'base'>): string {
  return JSON.stringify({ mine: text, base });
}

/** What an earlier visit left unsaved; undefined if there is nothing or it cannot be read. */
export function trialsDraftOf(memory: Storage): KeptTrials | undefined {
  const draft = draftOf(memory, TRIALS_DRAFT);
  if (draft === undefined) return undefined;
  try {
    const kept = draftSchema.safeParse(JSON.parse(draft.text));
    return kept.success
      ? { text: kept.data.mine, base: kept.data.base, based_on: draft.based_on }
      : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Adds the entries that were written upon `base` to what somebody else saved meanwhile, each once: one whose name is taken there
 * gets a free one.
 */
export function withNewEntries(base: string, mine: string, theirs: string, shop: string): string {
  const start = theirs === '' ? newTrials(shop) : theirs;
  return newEntries(base, mine).reduce((text, entry) => {
    const same = writtenEntries(text).find(({ id }) => id === entry.id);
    if (same === undefined) return withEntry(text, entry);
    if (JSON.stringify(same) === JSON.stringify(entry)) return text;
    const kind = entry['kind'] === 'job' ? 'job' : 'trial';
    return withEntry(text, { ...entry, id: freeId(text, kind) });
  }, start);
}
