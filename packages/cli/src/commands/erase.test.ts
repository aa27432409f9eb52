import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openOriginals, openStore, type Store } from '@furrow/store';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { EXIT } from '../frame/exit-code.ts';
import { run } from './erase.ts';

let data: string;
beforeEach(() => {
  data = mkdtempSync(join(tmpdir(), 'furrow-erase-'));
});
afterEach(() => rmSync(data, { recursive: true }));

const STREAMS = { print: () => {}, problem: () => {} };

/** Works on the store as a server of the same computer would. */
async function inStore<T>(work: (store: Store) => Promise<T>): Promise<T> {
  const store = await openStore({ folder: data }, { now: () => new Date(), newId: randomUUID });
  try {
    return await work(store);
  } finally {
    await store.close();
  }
}

const content = (text: string) => ({ text, title: 'Seam nine', revision: null });
const saved = (): Promise<string> =>
  inStore(async (store) => {
    const { id } = await store.create(content('first words'));
    await store.save(id, content('second words'), 1);
    await store.commissioning.save(id, { readings: {}, ticks: ['lead'], findings: [] }, 0);
    return id;
  });
const erase = (id: string, options: object = {}) =>
  run([id], { data, earlier: false, readings: false, forGood: false, ...options } as never, STREAMS);

test('erase tells what would go, and touches nothing until it is said', async () => {
  const id = await saved();
  for (const part of [{}, { earlier: true }, { readings: true }]) {
    const told = await erase(id, part);
    expect(told.exit).toBe(0);
    expect(told.print).toMatch(/^This would go: .*Seam nine.*\nNothing was erased.*--for-good$/su);
  }
  const kept = await inStore(async (store) => [
    (await store.revisions(id))?.length,
    Object.keys((await store.commissioning.get(id))?.ticks ?? {}),
  ]);
  expect(kept).toEqual([2, ['lead']]);
});

test('erase takes the earlier revisions, the readings, or all of it, and only that', async () => {
  const id = await saved();
  expect((await erase(id, { earlier: true, forGood: true })).print).toContain('One earlier revision of');
  expect(await inStore((store) => store.revisions(id))).toHaveLength(1);
  expect((await erase(id, { earlier: true, forGood: true })).print).toContain('nothing earlier');
  expect((await erase(id, { readings: true, forGood: true })).print).toContain('are erased');
  expect(await inStore(async (store) => (await store.commissioning.get(id))?.ticks)).toEqual({});
  expect((await erase(id, { forGood: true })).print).toContain('is erased');
  expect(await inStore(async (store) => [await store.get(id), await store.listBin()])).toEqual([
    undefined,
    [],
  ]);
});

test('erase takes what was run and gauged, with its revisions and the files that no other job names', async () => {
  const [id, other] = [await saved(), await saved()];
  const originals = openOriginals(join(data, 'runs'), () => new Date());
  const put = async (text: string) => {
    async function* pieces() {
      yield new TextEncoder().encode(text);
    }
    return (await originals.put(pieces())).sha256;
  };
  const [own, shared] = [await put('x;z'), await put('x;z;both')];
  const record = (...hashes: readonly string[]) => ({ ...content(`files: ${hashes.join(' ')}`) });
  await inStore(async ({ readings }) => {
    await readings.save(id, record(own), 0);
    await readings.save(id, record(shared), 1);
    await readings.save(other, record(shared), 0);
  });
  expect((await erase(id, { readings: true })).print).toContain('and the 2 files that were measured');
  expect((await erase(id, { readings: true, forGood: true })).print).toContain('are erased');
  expect(
    await inStore(async ({ readings }) => [
      await readings.get(id),
      (await readings.revisions(id))?.length,
      (await readings.get(other))?.revision_number,
    ]),
  ).toEqual([null, 0, 1]);
  expect(await originals.bytes(own)).toBeUndefined();
  expect(await originals.bytes(shared)).toBe(8);
  // the last job that names a file takes it along
  await erase(other, { forGood: true });
  expect(await originals.bytes(shared)).toBeUndefined();
});

test('erase takes a job from the bin as well, and names what is kept where there is no such job', async () => {
  const [id, other] = [await saved(), await saved()];
  await inStore((store) => store.bin(id));
  expect((await erase(id, { forGood: true })).exit).toBe(0);
  const refused = await erase(id, { forGood: true });
  expect(refused.exit).toBe(EXIT.badInput);
  expect(refused.problem?.join('\n')).toMatch(new RegExp(`no saved job “${id}”.*${other}  Seam nine$`, 'su'));
  expect((await erase(other, { earlier: true, readings: true })).exit).toBe(EXIT.badInput);
});
