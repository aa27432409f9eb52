import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { Modal } from '../../ui/dialog/index.ts';

interface ReasonDialogProps {
  readonly title: string;
  readonly lead: string;
  /** What stands on the button. */
  readonly act: string;
  readonly onReason: (reason: string) => void;
  readonly onClose: () => void;
}

/** Asks for a reason before something is changed. */
export function ReasonDialog({ title, lead, act, onReason, onClose }: ReasonDialogProps): VNode {
  const [reason, setReason] = useState('');
  const ready = reason.trim() !== '';
  return (
    <Modal title={title} onClose={onClose}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (ready) onReason(reason.trim());
        }}
      >
        <p>{lead}</p>
        <label class="stacked">
          Reason
          <input
            type="text"
            value={reason}
            maxLength={300}
            onInput={(event) => setReason(event.currentTarget.value)}
          />
        </label>
        <p class="modal-actions">
          <button type="submit" class="primary" aria-disabled={!ready}>
            {act}
          </button>
          <button type="button" onClick={onClose}>
            Cancel
          </button>
        </p>
      </form>
    </Modal>
  );
}
