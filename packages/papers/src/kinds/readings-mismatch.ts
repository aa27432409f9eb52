import type { UnitSystem } from '@furrow/engine';
import type { PaperBlock } from '../blocks/index.ts';
import { otherPlanWords } from '../words/index.ts';
import type { PaperSubject } from './paper-subject.ts';

/** Says so where the readings were taken by papers of another plan. */
export function mismatchBlocks({ readings, answer }: PaperSubject, units: UnitSystem): PaperBlock[] {
  const items = readings === undefined ? [] : otherPlanWords(readings.readings, answer, units);
  return items.length === 0 ? [] : [{ kind: 'list', tone: 'caution', items }];
}
