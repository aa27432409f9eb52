import type { Limit, UnitSystem } from '@furrow/engine';
import { limitTable, remedyList } from '../blocks/index.ts';
import { blockLines } from './block-to-text.ts';

/** Margins for the terminal, with what would mend those that do not hold; empty where there are none. */
export function limitLines(limits: readonly Limit[], units: UnitSystem): string[] {
  if (limits.length === 0) return [];
  return [...blockLines(limitTable('Margins', limits, units)), ...blockLines(remedyList(limits, units)), ''];
}
