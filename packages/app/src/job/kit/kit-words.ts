import { isKitUnsaved, type KitState } from './kit-desk.ts';

/** Where the kit stands between page and store, in words. */
export function kitSaveWords(state: KitState): string {
  const { save, revision } = state;
  if (save.is === 'saving') return 'saving';
  if (save.is === 'failed') return `not saved: ${save.why}`;
  if (revision === 0) return state.file.text.trim() === '' ? 'no kit yet' : 'not saved yet';
  return isKitUnsaved(state)
    ? `changed since revision ${revision}, not saved yet`
    : `saved as revision ${revision}`;
}

/** Whether jobs can be planned with the kit, in words. */
export function kitStatusWords(state: KitState): string {
  const { issues, file } = state;
  if (file.text.trim() === '') return 'Nothing is described yet.';
  if (issues[0]?.code === 'KIT_SYNTAX') return 'The text of the kit cannot be read.';
  if (issues.length > 0) {
    const count = issues.length === 1 ? 'one mistake' : `${issues.length} mistakes`;
    return `The kit has ${count}; jobs are not planned with it until it is put right.`;
  }
  return isKitUnsaved(state)
    ? 'The kit can be read. Jobs are planned with it once it is saved.'
    : 'The kit can be read, and every job is planned with it.';
}
