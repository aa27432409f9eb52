import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { Modal } from '../../ui/dialog/index.ts';
import { useBench } from '../state/index.ts';

/** Saving that asks first where the text cannot be planned: such a text is a draft, and it may be a slip of the hand. */
export function useSave(onSaved: (id: string) => void): {
  readonly save: (asCopy: boolean) => void;
  /** The question, while it is asked. */
  readonly question: VNode | null;
} {
  const bench = useBench();
  const [asked, setAsked] = useState<{ readonly asCopy: boolean }>();
  const saveNow = async (asCopy: boolean): Promise<void> => {
    setAsked(undefined);
    const id = await bench.save(asCopy);
    if (id !== undefined) onSaved(id);
  };
  const save = (asCopy: boolean): void => {
    if (bench.store.get().issues.length > 0) setAsked({ asCopy });
    else void saveNow(asCopy);
  };
  const close = (): void => setAsked(undefined);
  const question =
    asked === undefined ? null : (
      <Modal title="Save a job that cannot be planned?" onClose={close}>
        <p>
          The text is empty or has mistakes. It is kept as a draft, as the newest revision; the one before
          stays in the history.
        </p>
        <p class="modal-actions">
          <button type="button" class="primary" onClick={close}>
            Go on writing
          </button>
          <button type="button" onClick={() => void saveNow(asked.asCopy)}>
            Save as a draft
          </button>
        </p>
      </Modal>
    );
  return { save, question };
}
