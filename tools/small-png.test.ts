import { deflateSync, inflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { smallPng } from './small-png.ts';

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

function part(name: string, content: Buffer): Buffer {
  const frame = Buffer.alloc(4);
  frame.writeUInt32BE(content.length);
  return Buffer.concat([frame, Buffer.from(name, 'latin1'), content, Buffer.alloc(4)]);
}

/** A picture whose rows are given with their filters. */
function picture(width: number, rows: readonly (readonly number[])[]): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(rows.length, 4);
  header.set([8, 2], 8);
  const parts = [
    part('IHDR', header),
    part('IDAT', deflateSync(Buffer.from(rows.flat()))),
    part('IEND', Buffer.alloc(0)),
  ];
  return Buffer.concat([Buffer.from(SIGNATURE), ...parts]);
}

function content(png: Buffer, name: string): Buffer {
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at)) {
    if (png.toString('latin1', at + 4, at + 8) === name)
      return png.subarray(at + 8, at + 8 + png.readUInt32BE(at));
  }
  throw new Error(`no ${name}`);
}

describe('smallPng', () => {
  it('keeps the colours of every pixel, whatever filter the rows were written with', () => {
    const red = [200, 10, 20];
    const png = picture(2, [
      [0, ...red, ...red],
      [1, ...red, 0, 0, 0],
      [2, 0, 0, 0, 0, 0, 0],
      [3, 100, 5, 10, 0, 0, 0],
      [4, 0, 0, 0, 1, 2, 3],
    ]);
    const small = smallPng(png);
    const table = content(small, 'PLTE');
    const pixels = inflateSync(content(small, 'IDAT'));
    const rows = Array.from({ length: 5 }, (_, y) => [...pixels.subarray(y * 3 + 1, y * 3 + 3)]);
    const colours = rows.flat().map((index) => [...table.subarray(index * 3, index * 3 + 3)]);
    expect(colours).toEqual([...Array(9).fill(red), [201, 12, 23]]);
  });

  it('takes rare shades beyond 256 to their nearest', () => {
    const common = Array.from({ length: 256 }, (_, index) => [index, 0, 0]);
    const rare = common.slice(0, 144).map(([red = 0]) => [red, 1, 0]);
    const small = smallPng(picture(656, [[0, ...[...common, ...common, ...rare].flat()]]));
    expect(content(small, 'PLTE').length).toBe(3 * 256);
    const pixels = inflateSync(content(small, 'IDAT')).subarray(1);
    expect([...pixels.subarray(512)]).toEqual([...pixels.subarray(0, 144)]);
  });
});
