import type { VNode } from 'preact';
import { ChooseFile } from './choose-file.tsx';

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
  const open = async (chosen: File): Promise<void> => {
    if (chosen.size > FILE_BYTES_MOST) onTrouble(`${chosen.name} is too large to be a ${noun} file.`);
    else onText(await chosen.text());
  };
  return (
    <ChooseFile
      label="Open file"
      name={`${noun.charAt(0).toUpperCase()}${noun.slice(1)} file to open`}
      accept=".yaml,.yml,.json,.txt"
      onFile={open}
    />
  );
}
