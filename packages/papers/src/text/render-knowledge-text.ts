import type { KnowledgeReport, UnitSystem } from '@furrow/engine';
import { knowledgeBlocks } from '../blocks/index.ts';
import { blocksToText } from './block-to-text.ts';

/** Writes what a shop knows for the terminal. */
export function renderKnowledgeText(report: KnowledgeReport, units: UnitSystem): string {
  return blocksToText(knowledgeBlocks(report, units));
}
