import type { NextTrialReport, UnitSystem } from '@furrow/engine';
import { nextTrialBlocks } from '../blocks/index.ts';
import { blocksToText } from './block-to-text.ts';
import { heading } from './told.ts';

/** Writes the next trial for the terminal. */
export function renderNextTrialText(trial: NextTrialReport, units: UnitSystem): string {
  return blocksToText([
    heading('The trial that teaches most per minute'),
    ...nextTrialBlocks(trial, units),
  ]).trimEnd();
}
