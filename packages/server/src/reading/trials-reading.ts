import { readTrials, TRIALS_TEXT_MOST } from '@furrow/engine';
import { Refused } from '../guard/refused.ts';
import { shopFileReading } from './shop-file-reading.ts';
import { toMend } from './to-mend.ts';

/** How the text of a trials file is read. */
export const TRIALS_READING = shopFileReading({
  noun: 'trials file',
  most: TRIALS_TEXT_MOST,
  tooLarge: 'TRIALS_TOO_LARGE',
  untitled: 'Unnamed shop',
  read: readTrials,
  titleOf: ({ trials }) => trials.shop,
});

/** Hands back the text of trials that can be learned from, or refuses it; `whose` names them in the refusal. */
export function wholeTrials(text: string, whose = 'The trials file'): string {
  const outcome = readTrials(text);
  if (outcome.ok) return text;
  const { issues } = outcome;
  throw new Refused('KNOWLEDGE_NOT_READABLE', `${whose} cannot be learned from yet: ${toMend(issues)}.`, {
    issues,
  });
}
