import type { Source } from '../limit/index.ts';
import type { RowOutcome } from './outcome.ts';
import { hazardWording } from './wording.ts';

/** A row without the verdict, which follows from its numbers. */
type HazardStatement = Omit<RowOutcome, 'verdict' | 'note'> & { readonly note?: string };

/** Works out the wording of a value held against a rule. */
export function hazardRow({ note = '', ...statement }: HazardStatement): RowOutcome {
  const { value, figure, sense } = statement;
  return { ...statement, note, verdict: hazardWording(value, figure, sense) };
}

/** A source read in a public text. */
export function confirmed(text: string): Source {
  return { text, provenance: 'confirmed' };
}

/** A source that is recalled, not read. */
export function recalled(text: string): Source {
  return { text, provenance: 'memory' };
}

/** A figure worked out. */
export function derived(text: string): Source {
  return { text, provenance: 'derived' };
}

/** A value of the job. */
export const STATED: Source = { text: 'stated in the job', provenance: 'job file' };
