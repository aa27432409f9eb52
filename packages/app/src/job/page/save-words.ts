import { type BenchState, isUnsaved } from '../state/index.ts';

/** Where the job stands between page and store, in words. */
export function saveWords(state: BenchState): string {
  const { save, savedAs } = state;
  if (save.is === 'saving') return 'saving';
  if (save.is === 'failed') {
    return `not saved: ${save.why}${save.conflict ? ' “Save as copy” keeps both.' : ''}`;
  }
  if (savedAs === undefined) return 'not saved yet';
  return isUnsaved(state)
    ? `changed since revision ${savedAs.revision}, not saved yet`
    : `saved as revision ${savedAs.revision}`;
}
