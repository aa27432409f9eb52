import type { VNode } from 'preact';
import { useSheet, useSheetState } from './sheet-context.ts';

/** Takes the last change of the file back. */
export function UndoButton(): VNode {
  const sheet = useSheet();
  const none = useSheetState((state) => state.undoable === 0);
  return (
    <button
      type="button"
      aria-disabled={none}
      onClick={() => {
        if (!none) sheet.undo();
      }}
    >
      Undo
    </button>
  );
}
