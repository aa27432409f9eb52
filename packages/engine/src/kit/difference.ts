import { type DocumentDifference, documentDifference } from '../document/index.ts';
import type { UnitSystem } from '../quantity/index.ts';
import { kitFields } from './kit-fields.ts';
import type { ReadKit } from './read-kit.ts';

/**
 * Tells in what two revisions of a kit differ, in words.
 *
 * @param before - the earlier revision as read [record], from `readKit`
 * @param after - the later revision as read [record], from `readKit`
 * @param system - units of the words [text], inch or metric
 * @returns the differences in the order of the file, none for the same revision [list]
 * @source none: bookkeeping
 * @example
 * kitDifference(demoKit, demoKit, 'metric') // => []
 */
export function kitDifference(
  before: ReadKit,
  after: ReadKit,
  system: UnitSystem,
): readonly DocumentDifference[] {
  return documentDifference(kitFields(), before.kit, after.kit, system);
}
