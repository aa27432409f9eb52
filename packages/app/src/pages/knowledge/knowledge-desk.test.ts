import type { SavedShopFile } from '@furrow/contract';
import { newTrials } from '@furrow/engine';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { MemoryStorage } from '../../testing/index.ts';
import { openKnowledgeDesk } from './knowledge-desk.ts';

const START = newTrials('Shop one');

function saved(text: string, revision_number: number): SavedShopFile {
  const saved_at = '2026-11-25T10:00:00.000Z';
  return {
    title: 't',
    revision: null,
    revision_number,
    saved_at,
    saved_by: null,
    text,
    valid: true,
    issues: [],
  };
}

/** A server that holds one file; what it was sent, in order. */
function serverWith(first: SavedShopFile) {
  let kept = first;
  let down = false;
  const sent: { text: string; based_on: number }[] = [];
  vi.stubGlobal('fetch', async (_path: string, { body }: { body: string }) => {
    if (down) throw new TypeError('no connection');
    const save: { text: string; based_on: number } = JSON.parse(body);
    sent.push(save);
    if (save.based_on !== kept.revision_number) {
      const conflict = { code: 'KNOWLEDGE_CHANGED_MEANWHILE', message: 'Changed meanwhile.', newer: kept };
      return new Response(JSON.stringify(conflict), { status: 409 });
    }
    kept = saved(save.text, kept.revision_number + 1);
    return new Response(JSON.stringify(kept), { status: 200 });
  });
  return {
    sent,
    kept: () => kept,
    other: (text: string) => {
      kept = saved(text, kept.revision_number + 1);
    },
    setDown: (now: boolean) => {
      down = now;
    },
  };
}

const remark = (words: string) => ({ edit: (text: string) => `${text}# ${words}\n`, done: words, shop: 's' });

afterEach(() => vi.unstubAllGlobals());

describe('the shop’s trials on their desk', () => {
  it('saves a change at once, upon the revision it was made from', async () => {
    const server = serverWith(saved(START, 3));
    const desk = openKnowledgeDesk(server.kept(), new MemoryStorage());
    expect(await desk.apply(remark('one'))).toBeUndefined();
    expect(server.sent).toEqual([{ text: `${START}# one\n`, based_on: 3 }]);
    expect(desk.store.get()).toMatchObject({ message: 'one', saved: { revision_number: 4 } });
  });

  it('begins a file under the name of the shop where nothing is saved', async () => {
    const server = serverWith({ ...saved('', 0), saved_at: null });
    const desk = openKnowledgeDesk(server.kept(), new MemoryStorage());
    expect(await desk.apply({ ...remark('one'), shop: 'Shop two' })).toBeUndefined();
    expect(server.kept().text).toBe(`${newTrials('Shop two')}# one\n`);
  });

  it('makes a change anew upon what somebody else saved meanwhile', async () => {
    const server = serverWith(saved(START, 3));
    const desk = openKnowledgeDesk(server.kept(), new MemoryStorage());
    server.other(`${START}# theirs\n`);
    expect(await desk.apply(remark('mine'))).toBeUndefined();
    expect(server.kept()).toMatchObject({ text: `${START}# theirs\n# mine\n`, revision_number: 5 });
  });

  it('tells what is wrong with a change and sends nothing', async () => {
    const server = serverWith(saved(START, 3));
    const desk = openKnowledgeDesk(server.kept(), new MemoryStorage());
    const wrong = await desk.apply({ ...remark('one'), edit: () => 'furrow_trials: 99\n' });
    expect(wrong?.length).toBeGreaterThan(0);
    expect(server.sent).toEqual([]);
    expect(desk.store.get()).toMatchObject({ text: START, message: '' });
  });

  it('gives a change up that the server did not take, and says so', async () => {
    const server = serverWith(saved(START, 3));
    const memory = new MemoryStorage();
    const desk = openKnowledgeDesk(server.kept(), memory);
    server.setDown(true);
    expect(await desk.apply(remark('one'))).toEqual([]);
    expect(desk.store.get()).toMatchObject({ text: START, trouble: expect.stringContaining('not answer') });
    expect(memory.length).toBe(0);
    server.setDown(false);
    expect(await desk.apply(remark('two'))).toBeUndefined();
    expect(server.kept().text).toBe(`${START}# two\n`);
  });
});
