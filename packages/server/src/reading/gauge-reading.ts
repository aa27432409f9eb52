import { GAUGE_TEXT_MOST, readGauge } from '@furrow/engine';
import { Refused } from '../guard/refused.ts';
import { shopFileReading } from './shop-file-reading.ts';
import { toMend } from './to-mend.ts';

/** How the text of a gauge is read. */
export const GAUGE_READING = shopFileReading({
  noun: 'gauge file',
  most: GAUGE_TEXT_MOST,
  tooLarge: 'GAUGE_TOO_LARGE',
  untitled: 'Unnamed gauge',
  read: readGauge,
  titleOf: ({ gauge }) => gauge.gauge,
});

/** Hands back the text of a gauge that can be used, or refuses it; an emptied one is none. */
export function wholeGauge(text: string): string | undefined {
  if (text.trim() === '') return undefined;
  const outcome = readGauge(text);
  if (outcome.ok) return text;
  const { issues } = outcome;
  throw new Refused('GAUGE_NOT_READABLE', `The shop’s gauge cannot be used yet: ${toMend(issues)}.`, {
    issues,
  });
}
