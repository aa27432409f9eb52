import type { RunReport, UnitSystem } from '@furrow/engine';
import { runBlocks } from '../blocks/index.ts';
import { blocksToText } from './block-to-text.ts';

/** Writes the review of a log for the terminal. */
export function renderRunText(report: RunReport, title: string, units: UnitSystem): string {
  return blocksToText(runBlocks(report, title, units));
}
