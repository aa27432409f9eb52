import { readFileSync } from 'node:fs';
import type { SavedShopFile } from '@furrow/contract';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { draftOf, isUnsaved } from '../../sheet/keep/index.ts';
import { MemoryStorage } from '../../testing/index.ts';
import { openKitDesk } from './kit-desk.ts';
import { kitSaveWords, kitStatusWords } from './kit-words.ts';

const TEXT = readFileSync(new URL('../../../../../examples/yard-kit.yaml', import.meta.url), 'utf8');
const NONE: SavedShopFile = {
  title: '',
  revision: null,
  revision_number: 0,
  saved_at: null,
  saved_by: null,
  text: '',
  valid: false,
  issues: [],
};

function saved(text: string, revision_number: number): SavedShopFile {
  const saved_at = '2026-11-25T10:00:00.000Z';
  return { ...NONE, title: 't', revision: 'a'.repeat(64), revision_number, saved_at, text, valid: true };
}

function serverAnswers(status: number, body: unknown): ReturnType<typeof vi.fn> {
  const server = vi.fn(async () => new Response(JSON.stringify(body), { status }));
  vi.stubGlobal('fetch', server);
  return server;
}

afterEach(() => vi.unstubAllGlobals());

describe('the kit on its desk', () => {
  it('has nothing wrong as long as nothing is described', () => {
    const { store } = openKitDesk(NONE, new MemoryStorage(), 'metric');
    expect(store.get().issues).toEqual([]);
    expect(kitSaveWords(store.get())).toBe('no kit yet');
    expect(kitStatusWords(store.get())).toBe('Nothing is described yet.');
  });

  it('is begun from an empty file by the form', () => {
    const desk = openKitDesk(NONE, new MemoryStorage(), 'metric');
    desk.change([{ do: 'set', path: ['title'], value: 'Our kit' }]);
    expect(desk.store.get().file.text).toBe('furrow_kit: 1\ntitle: Our kit\n');
    expect(desk.store.get().issues.length).toBeGreaterThan(0);
    expect(kitStatusWords(desk.store.get())).toContain('mistake');
  });

  it('saves based on the revision it was made from, and then is saved', async () => {
    const memory = new MemoryStorage();
    const desk = openKitDesk(saved(TEXT, 4), memory, 'metric');
    desk.change([{ do: 'set', path: ['ambient', 'temperature'], value: '35 °C' }]);
    const { text } = desk.store.get().file;
    expect(draftOf(memory, 'kit')).toEqual({ text, based_on: 4 });
    expect(desk.store.get().read?.kit.ambient.temperature).toBeCloseTo(308.15, 9);
    const server = serverAnswers(200, saved(text, 5));
    expect(await desk.save()).toBe(true);
    expect(JSON.parse(String(server.mock.calls[0]?.[1].body))).toEqual({ text, based_on: 4 });
    expect(isUnsaved(desk.store.get())).toBe(false);
    expect(kitSaveWords(desk.store.get())).toBe('saved as revision 5');
    expect(draftOf(memory, 'kit')).toBeUndefined();
  });

  it('keeps its text where somebody else saved meanwhile, and lets the person choose', async () => {
    const desk = openKitDesk(saved(TEXT, 4), new MemoryStorage(), 'metric');
    desk.change([{ do: 'set', path: ['title'], value: 'Mine' }]);
    const mine = desk.store.get().file.text;
    const newer = saved(TEXT.replace('bay 2', 'bay 3'), 5);
    serverAnswers(409, { code: 'KIT_CHANGED_MEANWHILE', message: 'It was changed meanwhile.', newer });
    expect(await desk.save()).toBe(false);
    expect(desk.store.get().file.text).toBe(mine);
    expect(desk.store.get().newer?.saved.revision_number).toBe(5);
    const server = serverAnswers(200, saved(mine, 6));
    await desk.settle('mine');
    expect(desk.store.get().revision).toBe(6);
    expect(JSON.parse(String(server.mock.calls[0]?.[1].body))).toEqual({ text: mine, based_on: 5 });
  });

  it('puts unsaved changes of an earlier visit back, and gives them up when asked', () => {
    const memory = new MemoryStorage();
    openKitDesk(saved(TEXT, 2), memory, 'metric').setText(TEXT.replace('bay 2', 'bay 9'));
    const desk = openKitDesk(saved(TEXT, 2), memory, 'metric');
    expect(desk.store.get().restored).toBe(true);
    expect(desk.store.get().file.text).toContain('bay 9');
    desk.discard();
    expect(desk.store.get().file.text).toBe(TEXT);
    expect(draftOf(memory, 'kit')).toBeUndefined();
  });

  it('takes a save that was stored without an answer for its own', async () => {
    const desk = openKitDesk(saved(TEXT, 4), new MemoryStorage(), 'metric');
    desk.change([{ do: 'set', path: ['title'], value: 'First' }]);
    const first = desk.store.get().file.text;
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('no connection')));
    expect(await desk.save()).toBe(false);
    desk.change([{ do: 'set', path: ['title'], value: 'Second' }]);
    const second = desk.store.get().file.text;
    const conflict = { code: 'KIT_CHANGED_MEANWHILE', message: 'm', newer: saved(first, 5) };
    const bases: number[] = [];
    vi.stubGlobal('fetch', async (_path: string, request: { body: string }) => {
      bases.push(JSON.parse(request.body).based_on);
      return bases.length === 1
        ? new Response(JSON.stringify(conflict), { status: 409 })
        : new Response(JSON.stringify(saved(second, 6)), { status: 200 });
    });
    expect(await desk.save()).toBe(true);
    expect(bases).toEqual([4, 5]);
  });
});
