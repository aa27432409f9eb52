import type { VNode } from 'preact';
import { useRef } from 'preact/hooks';
import { Modal } from '../../ui/dialog/index.ts';

interface PasteDialogProps {
  readonly onText: (text: string) => void;
  readonly onClose: () => void;
}

/** Takes the text of a job file that was copied elsewhere. */
export function PasteDialog({ onText, onClose }: PasteDialogProps): VNode {
  const area = useRef<HTMLTextAreaElement>(null);
  const open = (): void => {
    const text = area.current?.value ?? '';
    onClose();
    if (text.trim() !== '') onText(text);
  };
  return (
    <Modal title="Paste a job file" onClose={onClose}>
      <label class="stacked">
        Text of the job file, YAML or JSON
        <textarea ref={area} rows={14} spellcheck={false} wrap="off" />
      </label>
      <p class="modal-actions">
        <button type="button" class="primary" onClick={open}>
          Open on the bench
        </button>
        <button type="button" onClick={onClose}>
          Cancel
        </button>
      </p>
    </Modal>
  );
}
