import type { GaugeReport, UnitSystem } from '@furrow/engine';
import { gaugeStudyBlocks } from '../blocks/index.ts';
import { blocksToText } from './block-to-text.ts';

/** Writes what study and checks say of a gauge for the terminal: whether it may be used first. */
export function renderGaugeText(report: GaugeReport, units: UnitSystem): string {
  return blocksToText(gaugeStudyBlocks(report, units));
}
