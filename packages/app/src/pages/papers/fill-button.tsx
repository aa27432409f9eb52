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
  /** Is told that the paper can be filled in, before it is handed out. */
  readonly onFilled: () => Promise<void>;
  /** Is told why it could not be filled in. */
  readonly onTrouble: (trouble: string) => void;
}

/** Largest file that is looked at; a readings file is far smaller. */
const FILE_BYTES_MOST = 1_000_000;

/** Asks for a readings file and hands out the paper filled in from it. */
export function FillButton({ of, file, title, choices, onFilled, onTrouble }: FillButtonProps): VNode {
  const fill = async (readings: File): Promise<void> => {
    if (readings.size > FILE_BYTES_MOST) {
      onTrouble(`${readings.name} is too large to be a readings file.`);
      return;
    }
    const filled = { readings: await readings.text() };
    let reply = await fetchFilled(of, file, choices, filled);
    if (reply.ok) {
      await onFilled();
      // made anew, it names who released it
      if ('id' in of) reply = await fetchFilled(of, file, choices, filled);
    }
    if (reply.ok) {
      download(reply.value, file);
      return;
    }
    const { message, issues } = reply.failure;
    const places = issues.map(({ message: words, position }) =>
      position === undefined ? words : `line ${position.line}: ${words}`,
    );
    onTrouble([message, ...places].join(' '));
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
