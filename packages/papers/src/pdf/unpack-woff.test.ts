import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { unpackWoff } from './unpack-woff.ts';

const { resolve } = createRequire(import.meta.url);
const packed = (style: string): Buffer =>
  readFileSync(
    resolve(
      `@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-${style}-400-normal.woff`,
    ),
  );

/** Sum of the 32-bit words of a table, as the OpenType specification defines its checksum. */
function checksum(table: DataView): number {
  let sum = 0;
  for (let at = 0; at < table.byteLength; at += 4) sum = (sum + table.getUint32(at)) >>> 0;
  return sum;
}

describe('a packed font', () => {
  test.each(['latin', 'latin-ext'])('has every table where its directory says, whole (%s)', (style) => {
    const woff = packed(style);
    const font = unpackWoff(woff);
    const view = new DataView(font.buffer);
    const count = woff.readUInt16BE(12);
    expect([view.getUint32(0), view.getUint16(4)]).toEqual([0x00010000, count]);
    expect(font.length).toBe(woff.readUInt32BE(16));
    // OpenType: sixteen times the largest power of two in the count of tables (8 to 15 here), that power, and what is left
    expect([view.getUint16(6), view.getUint16(8)]).toEqual([128, 3]);
    expect(view.getUint16(10)).toBe(16 * count - 128);
    let sum = 0;
    for (let entry = 12; entry < 12 + 16 * count; entry += 16) {
      const [stated, offset, length] = [4, 8, 12].map((at) => view.getUint32(entry + at)) as [
        number,
        number,
        number,
      ];
      const table = new DataView(font.buffer, offset, Math.ceil(length / 4) * 4);
      const tag = Buffer.from(font.subarray(entry, entry + 4)).toString('latin1');
      // the head holds the checksum of the whole font, which counts as nothing in its own
      const own = tag === 'head' ? (checksum(table) - table.getUint32(8)) >>> 0 : checksum(table);
      expect(own, tag).toBe(stated);
      expect(length, tag).toBe(woff.readUInt32BE(44 + 20 * ((entry - 12) / 16) + 12));
      sum += 1;
    }
    expect(sum).toBe(count);
  });

  test('that is damaged is told so, and anything else is given back', () => {
    const damaged = Uint8Array.from(packed('latin'));
    damaged.fill(0x55, 2000, 2100);
    expect(() => unpackWoff(damaged)).toThrow();
    const plain = new Uint8Array(60);
    expect(unpackWoff(plain)).toBe(plain);
  });
});
