import type { VNode } from 'preact';
import { useRef } from 'preact/hooks';

/** Largest file that is looked at; those of the bench are far smaller. */
const FILE_BYTES_MOST = 1_000_000;

interface OpenFileButtonProps {
  /** What the file holds, such as `job`. */
  readonly noun: string;
  readonly onText: (text: string) => void;
  /** Why a file was not taken, in words. */
  readonly onTrouble: (words: string) => void;
}

/** A button that lets a person choose a text file and hands its text on. */
export function OpenFileButton({ noun, onText, onTrouble }: OpenFileButtonProps): VNode {
  const file = useRef<HTMLInputElement>(null);
  const open = async (chosen: File | undefined): Promise<void> => {
    if (chosen === undefined) return;
    if (chosen.size > FILE_BYTES_MOST) onTrouble(`${chosen.name} is too large to be a ${noun} file.`);
    else onText(await chosen.text());
  };
  return (
    <>
      <button type="button" onClick={() => file.current?.click()}>
        Open file
      </button>
      <input
        ref={file}
        type="file"
        class="unseen"
        tabIndex={-1}
        aria-label={`${noun.charAt(0).toUpperCase()}${noun.slice(1)} file to open`}
        accept=".yaml,.yml,.json,.txt"
        onChange={(event) => {
          const input = event.currentTarget;
          void open(input.files?.[0]).then(() => {
            input.value = '';
          });
        }}
      />
    </>
  );
}
