import { type ReadReadings, readReadings, type SurveyInput } from '@furrow/engine';
import { OriginalDamaged, type Originals, type Store } from '@furrow/store';
import { Refused } from '../guard/refused.ts';
import { toMend } from '../reading/to-mend.ts';

/** Files of one job that are measured at most, together [bytes]. */
const MEASURED_MOST = 256 * 1024 * 1024;

/** What was run and gauged on a job, with the files that were measured. */
export interface Measured {
  readonly readings: ReadReadings;
  readonly files: readonly SurveyInput[];
}

/** What was measured on a saved job; undefined where nothing is saved, refused where it cannot be read. */
export async function measuredOf(
  { store, originals }: { readonly store: Store; readonly originals: Originals },
  id: string,
): Promise<Measured | undefined> {
  const saved = await store.readings.get(id);
  if (saved === null || saved === undefined || saved.text.trim() === '') return undefined;
  const { readings, files } = readRecord(saved.text);
  let room = MEASURED_MOST;
  const measured: SurveyInput[] = [...files];
  const { files: listed = [], run } = readings.readings;
  for (const { name, sha256 } of run === undefined ? listed : [...listed, run]) {
    const length = await originals.bytes(sha256);
    if (length === undefined || length > room) continue;
    room -= length;
    const bytes = await bytesOf(originals, sha256);
    if (bytes !== undefined) measured.push({ name, bytes });
  }
  return { readings, files: measured };
}

/** The readings of a text that has to be a whole record. */
export function readRecord(text: string): Measured {
  const outcome = readReadings(text);
  if (!outcome.ok) {
    const { issues } = outcome;
    throw new Refused('READINGS_NOT_READABLE', `The readings cannot be used yet: ${toMend(issues)}.`, {
      issues,
    });
  }
  return {
    readings: outcome.value,
    files: [{ name: 'readings', bytes: new TextEncoder().encode(text) }],
  };
}

/** A file among the originals; undefined where it is gone, or is no longer what was kept. */
async function bytesOf(originals: Originals, sha256: string): Promise<Uint8Array | undefined> {
  const pieces: Uint8Array[] = [];
  try {
    for await (const piece of originals.read(sha256)) pieces.push(piece);
  } catch (error) {
    if (error instanceof OriginalDamaged) return undefined;
    throw error;
  }
  return Buffer.concat(pieces);
}
