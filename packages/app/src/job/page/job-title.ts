import { writtenAt } from '../../sheet/document/index.ts';
import type { BenchState } from '../state/index.ts';

/** Title of the job as its text states it. */
export function jobTitle(state: BenchState): string {
  return writtenAt(state.readable, ['title']) ?? 'Untitled job';
}
