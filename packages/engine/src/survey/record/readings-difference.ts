import { type DocumentDifference, documentDifference } from '../../document/index.ts';
import type { UnitSystem } from '../../quantity/index.ts';
import type { ReadReadings } from './read-readings.ts';
import { readingsFields } from './readings-fields.ts';

/**
 * Tells in what two revisions of the readings of a job differ, in words.
 *
 * @param before - the earlier revision as read [record], from `readReadings`
 * @param after - the later revision as read [record], from `readReadings`
 * @param system - units of the words [text], inch or metric
 * @returns the differences in the order of the file, none for the same content [list]
 * @source none: bookkeeping
 * @example
 * const read = (note) => readReadings(`furrow_readings: 1\ngauge: ${note}`).value;
 * readingsDifference(read('no. 3'), read('no. 4'), 'metric')[0].words // => "Gauge: “no. 3” before, “no. 4” now."
 */
export function readingsDifference(
  before: Pick<ReadReadings, 'readings'>,
  after: Pick<ReadReadings, 'readings'>,
  system: UnitSystem,
): readonly DocumentDifference[] {
  return documentDifference(readingsFields(), before.readings, after.readings, system);
}
