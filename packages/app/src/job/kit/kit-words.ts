import { isUnsaved, saveWords } from '../../sheet/keep/index.ts';
import type { KitState } from './kit-desk.ts';

/** Where the kit stands between page and store, in words. */
export function kitSaveWords(state: KitState): string {
  const { save, revision, file } = state;
  const none = save.is === 'still' && revision === 0 && file.text.trim() === '';
  return none ? 'no kit yet' : saveWords(state);
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
  return isUnsaved(state)
    ? 'The kit can be read. Jobs are planned with it once it is saved.'
    : 'The kit can be read, and every job is planned with it.';
}
