import { inflateSync } from 'node:zlib';

const HEADER = 44;
const ENTRY = 20;
const PLAIN_HEADER = 12;
const PLAIN_ENTRY = 16;

/**
 * The same font with its tables unpacked, as an OpenType file (WOFF 1.0, W3C Recommendation of 2012, sections 4 and 5; the
 * order of the tables is kept). pdfkit reads packed fonts as well, but unpacks a table anew for each glyph.
 *
 * @param woff A WOFF file. Anything that is none is given back as it is.
 * @throws where a packed table is damaged
 *
 * @example
 * unpackWoff(new Uint8Array([0, 1, 0, 0])) // Uint8Array [0, 1, 0, 0]
 */
export function unpackWoff(woff: Uint8Array): Uint8Array {
  const from = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (woff.length < HEADER || from.getUint32(0) !== 0x774f4646) return woff;
  const count = from.getUint16(12);
  const tables = Array.from({ length: count }, (_, index) => {
    const entry = HEADER + ENTRY * index;
    const [offset, packed] = [from.getUint32(entry + 4), from.getUint32(entry + 8)];
    const length = from.getUint32(entry + 12);
    const bytes = woff.subarray(offset, offset + packed);
    return {
      tag: from.getUint32(entry),
      checksum: from.getUint32(entry + 16),
      bytes: packed < length ? inflateSync(bytes) : bytes,
    };
  });
  const start = PLAIN_HEADER + PLAIN_ENTRY * count;
  const whole = tables.reduce((size, { bytes }) => size + aligned(bytes.length), start);
  const font = new Uint8Array(whole);
  const to = new DataView(font.buffer);
  const power = Math.floor(Math.log2(count));
  to.setUint32(0, from.getUint32(4));
  to.setUint16(4, count);
  to.setUint16(6, PLAIN_ENTRY * 2 ** power);
  to.setUint16(8, power);
  to.setUint16(10, PLAIN_ENTRY * (count - 2 ** power));
  let offset = start;
  for (const [index, { tag, checksum, bytes }] of tables.entries()) {
    const entry = PLAIN_HEADER + PLAIN_ENTRY * index;
    to.setUint32(entry, tag);
    to.setUint32(entry + 4, checksum);
    to.setUint32(entry + 8, offset);
    to.setUint32(entry + 12, bytes.length);
    font.set(bytes, offset);
    offset += aligned(bytes.length);
  }
  return font;
}

/** Tables begin at a multiple of four bytes. */
function aligned(length: number): number {
  return Math.ceil(length / 4) * 4;
}
