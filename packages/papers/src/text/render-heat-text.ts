import { type HeatReport, sentencesWritten, type UnitSystem } from '@furrow/engine';
import {
  coolingBlocks,
  endBlocks,
  hardnessBlocks,
  heatGround,
  heatPassTable,
  heatTable,
  limitTable,
  preheatBlocks,
  remedyList,
  restList,
  skinBlock,
} from '../blocks/index.ts';
import { blocksToText } from './block-to-text.ts';
import { GOVERNED, heading, paragraph } from './told.ts';

/** Writes for the terminal what the plan does to the plate, and what it asks for before and after. */
export function renderHeatText(heat: HeatReport, title: string, units: UnitSystem): string {
  const report = sentencesWritten(heat, units);
  return blocksToText([
    { kind: 'heading', level: 1, text: title, below: heatGround(report, units) },
    heatPassTable(report, units),
    heatTable(report, units),
    ...(report.ends === undefined ? [] : endBlocks(report.ends, units)),
    ...(report.cooling_formulas.length === 0 ? [] : coolingBlocks(report, units)),
    ...hardnessBlocks(report, units),
    ...preheatBlocks(report, units),
    heading('Carburised skin'),
    skinBlock(report, units),
    ...(report.limits.length === 0
      ? []
      : [limitTable('Margins', report.limits, units), remedyList(report.limits, units)]),
    heading('What it rests on'),
    restList(report, units),
    { kind: 'list', tone: 'caution', items: report.cautions },
    paragraph(GOVERNED),
  ]);
}
