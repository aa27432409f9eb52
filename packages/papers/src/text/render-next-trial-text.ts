import type { NextTrialReport, UnitSystem } from '@furrow/engine';
import { nextTrialSetting, nextTrialWords } from '../words/index.ts';
import { plainLine } from './plain-line.ts';
import { wrapped } from './wrapped.ts';

/** Letters per line. */
const WIDTH = 100;

/** Writes the next trial for the terminal. */
export function renderNextTrialText(trial: NextTrialReport, units: UnitSystem): string {
  return [
    'The trial that teaches most per minute',
    ...wrapped(plainLine(nextTrialSetting(trial, units)), WIDTH),
    ...wrapped(plainLine(nextTrialWords(trial, units)), WIDTH),
    ...wrapped('Cut it on scrap of the same metal; local codes and licensed practice govern.', WIDTH),
  ].join('\n');
}
