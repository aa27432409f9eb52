import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { OriginalDamaged, type Originals, openOriginals } from './originals.ts';

let folder = '';
let originals: Originals;
const now = (): Date => new Date();
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'furrow-originals-')), 'runs');
  originals = openOriginals(folder, now);
});
afterEach(() => rmSync(join(folder, '..'), { recursive: true }));

async function* pieces(...bytes: Uint8Array[]): AsyncGenerator<Uint8Array> {
  yield* bytes;
}

async function all(from: AsyncIterable<Uint8Array>): Promise<Buffer> {
  const held: Uint8Array[] = [];
  for await (const piece of from) held.push(piece);
  return Buffer.concat(held);
}

const log = Buffer.from('t;U\r\n0,1;41,5\r\n\0\xff', 'latin1');
const sha256 = createHash('sha256').update(log).digest('hex');
const pathOf = (hash: string): string => join(folder, hash.slice(0, 2), `${hash}.log`);

describe('the originals', () => {
  it('keep a file byte for byte under its hash', async () => {
    expect(await originals.put(pieces(log.subarray(0, 5), log.subarray(5)))).toEqual({
      sha256,
      bytes: log.length,
    });
    expect(await all(originals.read(sha256))).toEqual(log);
    expect(await originals.bytes(sha256)).toBe(log.length);
    expect(await originals.bytes('0'.repeat(64))).toBeUndefined();
    expect(await originals.put(pieces(log))).toMatchObject({ sha256 });
  });

  it('do not give a file out whole that is no longer what was kept', async () => {
    await originals.put(pieces(log));
    const damaged = Buffer.from(log);
    damaged[3] = 65;
    writeFileSync(pathOf(sha256), damaged);
    await expect(all(originals.read(sha256))).rejects.toThrow(OriginalDamaged);
    rmSync(pathOf(sha256));
    await expect(all(originals.read(sha256))).rejects.toThrow('is gone');
  });

  it('leave nothing behind of a file that broke off, nor of one that a kill has cut', async () => {
    const broken = (async function* () {
      yield log;
      throw new Error('the one who sent it has gone');
    })();
    await expect(originals.put(broken)).rejects.toThrow('has gone');
    expect(readdirSync(folder)).toEqual([]);
    writeFileSync(join(folder, 'incoming-a'), 'half');
    openOriginals(folder, now);
    expect(readdirSync(folder)).toEqual(['incoming-a']);
    utimesSync(join(folder, 'incoming-a'), 0, 0);
    openOriginals(folder, now);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('hold the Parquet of a file beside it, and erase both', async () => {
    await originals.put(pieces(log));
    await originals.putParquet(sha256, [Buffer.from('PAR1')]);
    expect(readFileSync(originals.parquetPath(sha256), 'latin1')).toBe('PAR1');
    await originals.erase(sha256);
    expect(readdirSync(join(folder, sha256.slice(0, 2)))).toEqual([]);
    await originals.erase(sha256);
  });

  it.each(['../secret', 'AB'.repeat(32), ''])('look for no file called “%s”', async (name) => {
    await expect(originals.bytes(name)).rejects.toThrow();
    await expect(all(originals.read(name))).rejects.toThrow('no SHA-256');
  });
});
