import type { VNode } from 'preact';

interface SavedMeanwhileProps {
  /** What was saved: kit, gauge, readings. */
  readonly what: string;
  /** What somebody else saved; undefined: nobody did. */
  readonly newer: { readonly saved: { readonly revision_number: number } } | undefined;
  readonly onSettle: (choice: 'theirs' | 'mine') => Promise<unknown>;
}

/** Says that somebody else saved the same meanwhile, and asks which of both is to count. */
export function SavedMeanwhile({ what, newer, onSettle }: SavedMeanwhileProps): VNode | null {
  if (newer === undefined) return null;
  return (
    <p class="notice" role="alert">
      Somebody saved the {what} meanwhile, as revision {newer.saved.revision_number}.{' '}
      <button type="button" onClick={() => void onSettle('theirs')}>
        Take theirs
      </button>{' '}
      <button type="button" onClick={() => void onSettle('mine')}>
        Save mine after it
      </button>
    </p>
  );
}
