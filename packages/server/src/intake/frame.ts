/** Longest frame that is taken [bytes]. */
export const FRAME_BYTES_MOST = 64 * 1024;
/** Names and readings of one frame [-]. */
const NAMES_MOST = 200;
const READINGS_MOST = 10_000;

/** A frame as it goes to disk, or why it is not taken. */
export type Frame =
  | { readonly ok: true; readonly line: Uint8Array; readonly readings: number }
  | { readonly ok: false; readonly why: string };

const refused = (why: string): Frame => ({ ok: false, why });

/**
 * Makes the line of a frame of readings: the JSON object as it came, with the moment of its arrival before it.
 *
 * A frame holds a number per name, or a list per name for several readings at once; lists are of one length. Texts are
 * taken for clocks only as they are; nothing else goes in.
 */
export function frameOf(bytes: Uint8Array, arrived: Date): Frame {
  if (bytes.length > FRAME_BYTES_MOST) return refused(`longer than ${FRAME_BYTES_MOST / 1024} KiB`);
  const text = Buffer.from(bytes).toString('utf8').trim();
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch {
    return refused('no JSON');
  }
  if (typeof read !== 'object' || read === null || Array.isArray(read)) return refused('no JSON object');
  const entries = Object.entries(read);
  if (entries.length === 0 || entries.length > NAMES_MOST) return refused(`not 1 to ${NAMES_MOST} names`);
  const lengths = new Set<number>();
  for (const [name, value] of entries) {
    const values = Array.isArray(value) ? value : [value];
    if (Array.isArray(value)) lengths.add(value.length);
    if (!values.every(isReading)) return refused(`"${name.slice(0, 40)}" holds something that is no reading`);
  }
  if (lengths.size > 1) return refused('the lists of a frame are not of one length');
  const readings = lengths.size === 0 ? 1 : [...lengths][0]!;
  if (readings === 0 || readings > READINGS_MOST) return refused(`not 1 to ${READINGS_MOST} readings`);
  const inside = text.slice(1).replace(/[\r\n]+/gu, ' ');
  return { ok: true, line: Buffer.from(`{"arrived_at":"${arrived.toISOString()}",${inside}\n`), readings };
}

function isReading(value: unknown): boolean {
  return value === null || typeof value === 'number' || (typeof value === 'string' && value.length <= 60);
}
