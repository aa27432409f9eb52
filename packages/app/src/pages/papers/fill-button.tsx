import type { PaperChoices } from '@furrow/contract';
import type { VNode } from 'preact';
import { fetchFilled, type PapersOf } from '../../api/index.ts';
import { download } from '../../ui/hand-out/index.ts';
import { ChooseFile } from '../../ui/take-in/index.ts';

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
  const fill = async (readings: File): Promise<void> => {
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
    <ChooseFile
      label="Fill in"
      buttonName={`Fill in ${title}`}
      name={`Readings file for ${title}`}
      accept=".yaml,.yml,.json,.txt"
      onFile={fill}
    />
  );
}
