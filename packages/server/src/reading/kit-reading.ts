import { KIT_TEXT_MOST, type ReadKit, readKit } from '@furrow/engine';
import { Refused } from '../guard/refused.ts';
import { shopFileReading } from './shop-file-reading.ts';
import { toMend } from './to-mend.ts';

/** How the text of a kit is read. */
export const KIT_READING = shopFileReading({
  noun: 'kit',
  most: KIT_TEXT_MOST,
  tooLarge: 'KIT_TOO_LARGE',
  untitled: 'Untitled kit',
  read: readKit,
  titleOf: ({ kit }) => kit.title,
});

/** The kit of a text that has to be a whole one; `whose` names it in the refusal. */
export function readWholeKit(text: string, whose = 'The kit'): ReadKit {
  const outcome = readKit(text);
  if (outcome.ok) return outcome.value;
  const { issues } = outcome;
  throw new Refused('KIT_NOT_READABLE', `${whose} cannot be planned with yet: ${toMend(issues)}.`, {
    issues,
  });
}
