import type { VNode } from 'preact';
import { Modal } from './modal.tsx';

interface EraseDialogProps {
  /** What would be gone, as a sentence. */
  readonly what: string;
  readonly onErase: () => void;
  readonly onClose: () => void;
}

/** Asks before something is erased that cannot be brought back. */
export function EraseDialog({ what, onErase, onClose }: EraseDialogProps): VNode {
  return (
    <Modal title="Erase for good?" onClose={onClose}>
      <p>{what} It cannot be brought back.</p>
      <p class="modal-actions">
        <button type="button" class="primary" onClick={onClose}>
          Keep it
        </button>
        <button type="button" onClick={onErase}>
          Erase for good
        </button>
      </p>
    </Modal>
  );
}
