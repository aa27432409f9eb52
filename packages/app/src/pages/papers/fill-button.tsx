import type { PaperChoices } from '@furrow/contract';
import type { VNode } from 'preact';
import { useRef } from 'preact/hooks';
import { fetchFilled, type PapersOf } from '../../api/index.ts';
import { download } from '../../ui/hand-out/index.ts';

interface FillButtonProps {
  readonly of: PapersOf;
  readonly file: string;
  readonly title: string;
  readonly choices: PaperChoices;
  /** Is told that the paper was handed out, or why it could not be filled in. */
  readonly onDone: (trouble: string | undefined) => void;
}

/** Largest file that is looked at; a readings file is far smaller. */
const FILE_BYTES_MOST = 1_000_000;

/** Asks for a readings file and hands out the paper filled in from it. */
export function FillButton({ of, file, title, choices, onDone }: FillButtonProps): VNode {
  const chosen = useRef<HTMLInputElement>(null);
  const fill = async (readings: File | undefined): Promise<void> => {
    if (readings === undefined) return;
    if (readings.size > FILE_BYTES_MOST) {
      onDone(`${readings.name} is too large to be a readings file.`);
      return;
    }
    const reply = await fetchFilled(of, file, choices, { readings: await readings.text() });
    if (reply.ok) {
      download(reply.value, file);
      onDone(undefined);
      return;
    }
    const { message, issues } = reply.failure;
    const places = issues.map(({ message: words, position }) =>
      position === undefined ? words : `line ${position.line}: ${words}`,
    );
    onDone([message, ...places].join(' '));
  };
  return (
    <>
      <button type="button" aria-label={`Fill in ${title}`} onClick={() => chosen.current?.click()}>
        Fill in
      </button>
      <input
        ref={chosen}
        type="file"
        class="unseen"
        tabIndex={-1}
        aria-label={`Readings file for ${title}`}
        accept=".yaml,.yml,.json,.txt"
        onChange={(event) => {
          const input = event.currentTarget;
          void fill(input.files?.[0]).then(() => {
            input.value = '';
          });
        }}
      />
    </>
  );
}
