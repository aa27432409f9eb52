import { formatStated, type KnowledgeReport, type UnitSystem } from '@furrow/engine';

/** Entries in a row on one side that are worth a word. */
const ROW_LEAST = 3;

/** Whether cuts drift away from their predictions, in words: what was seen first, then what it may mean. */
export function driftWords({ drift }: Pick<KnowledgeReport, 'drift'>, units: UnitSystem): string {
  const { row, row_off_mm: off, since } = drift;
  const by = formatStated(Math.abs(off), 'mm', units, 'length');
  const seen = `The last ${row} cuts came out ${by} ${off > 0 ? 'deeper' : 'shallower'} than predicted on the mean`;
  if (since !== null) {
    const what = row >= ROW_LEAST ? `${seen}; they` : 'Cuts';
    return `${what} have drifted away since ${since}: look for a new batch of electrodes or plate, a worn nozzle, another gauge.`;
  }
  return row >= ROW_LEAST
    ? `${seen}; so many on one side happen by chance, and it is no drift yet.`
    : 'No drift: cuts scatter about what was predicted.';
}
