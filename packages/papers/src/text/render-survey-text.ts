import type { SurveyReport, SurveySeam, UnitSystem } from '@furrow/engine';
import {
  asideBlocks,
  filesList,
  historyBlocks,
  measuresList,
  nextBlock,
  type PaperBlock,
  recutBlocks,
  scannedBlocks,
  stretchTable,
  wantedBlock,
} from '../blocks/index.ts';
import { seamVerdictWords, teachesWords } from '../words/index.ts';
import { blocksToText } from './block-to-text.ts';
import { heading, titled } from './told.ts';

/** Writes what was measured of a groove for the terminal: the verdict first, in words. */
export function renderSurveyText(report: SurveyReport, units: UnitSystem): string {
  const { seam, sections, remarks } = report;
  return blocksToText([
    ...(seam === null ? [] : seamBlocks(seam, units)),
    ...scannedBlocks(sections, units),
    heading('How the files were read'),
    filesList(report),
    { kind: 'list', tone: 'caution', items: remarks },
  ]);
}

function seamBlocks(seam: SurveySeam, units: UnitSystem): PaperBlock[] {
  return [
    { kind: 'heading', level: 1, text: seamVerdictWords(seam, units) },
    { kind: 'list', tone: 'caution', items: seam.remarks },
    stretchTable(seam, units),
    wantedBlock(seam, units),
    measuresList(seam, units),
    heading('Measure next'),
    nextBlock(seam, units),
    ...recutBlocks(seam, units),
    ...asideBlocks(seam, units),
    ...historyBlocks(seam, units),
    ...titled('What it teaches the shop', 'plain', teachesWords(seam.teaches)),
  ];
}
