import type { VNode } from 'preact';
import { Modal } from '../../ui/dialog/index.ts';

interface ReplaceDialogProps {
  readonly onReplace: () => void;
  readonly onClose: () => void;
}

/** Asks before a job that was never saved gives way to another one. */
export function ReplaceDialog({ onReplace, onClose }: ReplaceDialogProps): VNode {
  return (
    <Modal title="Replace the unsaved job?" onClose={onClose}>
      <p>A job that was never saved is kept in this browser. Opening another one discards it.</p>
      <p class="modal-actions">
        <button type="button" class="primary" onClick={onClose}>
          Keep it
        </button>
        <button type="button" onClick={onReplace}>
          Discard it and open the other
        </button>
      </p>
    </Modal>
  );
}
