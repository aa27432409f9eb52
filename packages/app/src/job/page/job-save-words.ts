import { saveWords } from '../../sheet/keep/index.ts';
import type { BenchState } from '../state/index.ts';

/** Where the job stands between page and store, in words. */
export function jobSaveWords(state: BenchState): string {
  return `${saveWords(state)}${isOvertaken(state) ? ' “Save as copy” keeps both.' : ''}`;
}

/** Whether the last save was refused because somebody else saved meanwhile. */
export function isOvertaken({ save, newer }: BenchState): boolean {
  return save.is === 'failed' && newer !== undefined;
}
