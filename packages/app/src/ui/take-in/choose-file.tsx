import type { VNode } from 'preact';
import { useRef } from 'preact/hooks';

interface ChooseFileProps {
  /** What stands on the button. */
  readonly label: string;
  /** Name of the button for screen readers, where its label alone is not enough. */
  readonly buttonName?: string;
  /** Name of what is to be chosen, for screen readers. */
  readonly name: string;
  /** Endings that are offered; any where left out. */
  readonly accept?: string;
  readonly onFile: (file: File) => void | Promise<void>;
}

/** A button that lets a person choose a file; the same one can be chosen again. */
export function ChooseFile({ label, buttonName, name, accept, onFile }: ChooseFileProps): VNode {
  const file = useRef<HTMLInputElement>(null);
  const take = async (input: HTMLInputElement): Promise<void> => {
    const chosen = input.files?.[0];
    if (chosen !== undefined) await onFile(chosen);
    input.value = '';
  };
  return (
    <>
      <button type="button" aria-label={buttonName} onClick={() => file.current?.click()}>
        {label}
      </button>
      <input
        ref={file}
        type="file"
        class="unseen"
        tabIndex={-1}
        aria-label={name}
        accept={accept}
        onChange={(event) => void take(event.currentTarget)}
      />
    </>
  );
}
