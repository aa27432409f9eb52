import { isRigUnsaved, type RigState } from './rig.ts';

/** Where the readings stand between page and store, in words. */
export function rigSaveWords(state: RigState): string {
  const { save, newer, revision, saved } = state;
  if (newer !== undefined) return 'not saved: somebody else saved other readings of the same checks.';
  switch (save.is) {
    case 'saving':
      return 'saving';
    case 'failed':
      return `not saved: ${save.why} What was entered is kept in this browser and is tried again.`;
    case 'still':
      if (isRigUnsaved(state))
        return saved === undefined ? 'kept in this browser; saved once the job is' : 'not saved yet';
      return revision === 0
        ? 'nothing entered yet'
        : `saved with the job, revision ${revision} of the readings`;
  }
}
