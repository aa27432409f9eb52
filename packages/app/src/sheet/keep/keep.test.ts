import { describe, expect, it } from 'vitest';
import { failed, type Reply } from '../../api/index.ts';
import { MemoryStorage } from '../../testing/index.ts';
import { createStore } from '../../ui/store/index.ts';
import { draftOf } from './draft.ts';
import { type KeepTools, keepContent } from './keep.ts';
import { type KeepState, openedState } from './keep-state.ts';

interface Saved {
  readonly revision_number: number;
  readonly text: string;
}
type State = KeepState<string, Saved> & { readonly text: string };

const KEY = 'thing';
const DOWN = failed('The server does not answer.');

/** A store with one revisioned text; `weather` is what happens to a save on its way: lost before it, behind it, or not. */
function shop(
  options: Pick<KeepTools<string, Saved>, 'merge'> & {
    selfSaving?: boolean;
    nowhere?: boolean;
    restored?: boolean;
  } = {},
) {
  let kept: Saved = { revision_number: 1, text: 'a' };
  let weather: 'fine' | 'down' | 'answer lost' = 'fine';
  let meanwhile: (() => void) | undefined;
  const sent: { content: string; basedOn: number; anew: boolean }[] = [];
  const timers = new Map<() => void, number>();
  const memory = new MemoryStorage();
  const store = createStore<State>({
    ...openedState({ saved: kept, base: 'a', revision: 1, restored: options.restored ?? false }),
    text: options.restored === true ? 'ab' : 'a',
  });
  const send = async (content: string, basedOn: number, to: Saved | undefined): Promise<Reply<Saved>> => {
    sent.push({ content, basedOn, anew: to === undefined });
    if (weather === 'down') return DOWN;
    meanwhile?.();
    if (to !== undefined && basedOn !== kept.revision_number) {
      return { ok: false, failure: { message: 'Changed meanwhile.', issues: [], newer: kept } };
    }
    kept = { revision_number: kept.revision_number + 1, text: content };
    return weather === 'fine' ? { ok: true, value: kept } : DOWN;
  };
  const keep = keepContent<string, Saved>(store, {
    mine: () => store.get().text,
    put: (text) => store.set({ text }),
    same: (one, other) => one === other,
    contentOf: ({ text }) => text,
    ...(options.nowhere !== true && { send }),
    memory,
    key: () => KEY,
    draft: () => ({ text: store.get().text }),
    ...(options.merge !== undefined && { merge: options.merge }),
    ...(options.selfSaving === true && {
      later: (what: () => void, milliseconds: number) => {
        timers.set(what, milliseconds);
        return () => void timers.delete(what);
      },
    }),
  });
  return {
    keep,
    sent,
    state: store.get,
    kept: () => kept,
    draft: () => draftOf(memory, KEY),
    pauses: () => [...timers.values()],
    wait: () => {
      for (const what of [...timers.keys()]) {
        timers.delete(what);
        what();
      }
    },
    type: (text: string) => {
      store.set({ text });
      keep.changed();
    },
    other: (text: string) => {
      kept = { revision_number: kept.revision_number + 1, text };
    },
    beforeEach: (what: () => void) => {
      meanwhile = what;
    },
    setWeather: (next: typeof weather) => {
      weather = next;
    },
  };
}

describe('keepContent', () => {
  it('keeps a change in the browser until it is saved upon the revision it was made from', async () => {
    const at = shop();
    at.type('ab');
    expect(at.draft()).toEqual({ text: 'ab', based_on: 1 });
    expect(await at.keep.save()).toEqual({ revision_number: 2, text: 'ab' });
    expect(at.sent).toEqual([{ content: 'ab', basedOn: 1, anew: false }]);
    expect(at.state()).toMatchObject({ base: 'ab', revision: 2, save: { is: 'still' } });
    expect(at.draft()).toBeUndefined();
  });

  it('gives up changes for what they were made from', () => {
    const at = shop();
    at.type('ab');
    at.keep.discard();
    at.keep.changed();
    expect(at.state().text).toBe('a');
    expect(at.draft()).toBeUndefined();
  });

  it('says that changes of an earlier visit are back until they are saved or given up', async () => {
    const saved = shop({ restored: true });
    await saved.keep.save();
    expect(saved.state()).toMatchObject({ restored: false, base: 'ab' });
    const given = shop({ restored: true });
    given.keep.discard();
    expect(given.state()).toMatchObject({ restored: false, text: 'a' });
  });

  it('tells why a save failed until the next change, and sends it again', async () => {
    const at = shop();
    at.type('ab');
    at.setWeather('down');
    expect(await at.keep.save()).toBeUndefined();
    expect(at.state().save).toEqual({ is: 'failed', why: DOWN.failure.message });
    at.type('abc');
    expect(at.state().save).toEqual({ is: 'still' });
    expect(at.draft()).toEqual({ text: 'abc', based_on: 1 });
  });

  it('tells of a conflict, and takes what is saved without sending anything', async () => {
    const at = shop();
    at.type('ab');
    at.other('x');
    expect(await at.keep.save()).toBeUndefined();
    expect(at.state()).toMatchObject({
      text: 'ab',
      revision: 1,
      save: { is: 'failed', why: 'Changed meanwhile.' },
      newer: { saved: at.kept(), clashes: [] },
    });
    at.type('abc');
    expect(at.state().newer?.saved.text).toBe('x');
    await at.keep.settle('theirs');
    expect(at.state()).toMatchObject({ text: 'x', base: 'x', revision: 2, save: { is: 'still' } });
    expect(at.state().newer).toBeUndefined();
    expect(at.draft()).toBeUndefined();
    expect(at.sent).toHaveLength(1);
  });

  it('saves mine after a conflict, later too where the server is away just then', async () => {
    const at = shop();
    at.type('ab');
    at.other('x');
    await at.keep.save();
    at.setWeather('down');
    await at.keep.settle('mine');
    expect(at.state()).toMatchObject({ text: 'ab', save: { is: 'failed', why: DOWN.failure.message } });
    expect(at.draft()).toEqual({ text: 'ab', based_on: 2 });
    at.setWeather('fine');
    expect((await at.keep.save())?.revision_number).toBe(3);
    expect(at.kept().text).toBe('ab');
  });

  it('takes what was stored without an answer for its own, once', async () => {
    const at = shop();
    at.type('ab');
    at.setWeather('answer lost');
    await at.keep.save();
    at.setWeather('fine');
    at.type('abc');
    expect((await at.keep.save())?.text).toBe('abc');
    expect(at.sent.map(({ basedOn }) => basedOn)).toEqual([1, 1, 2]);
    // the same text from somebody else, after an answer, is theirs
    at.type('abcd');
    at.other('abc');
    expect(await at.keep.save()).toBeUndefined();
    expect(at.state().newer?.saved.text).toBe('abc');
  });

  it('stays on its own save where the one after it is lost', async () => {
    const at = shop();
    at.type('ab');
    at.setWeather('answer lost');
    await at.keep.save();
    at.type('abc');
    await at.keep.save();
    expect(at.state()).toMatchObject({ base: 'ab', revision: 2, newer: undefined });
    at.setWeather('fine');
    expect((await at.keep.save())?.text).toBe('abc');
  });

  it('saves as a new thing, based on nothing', async () => {
    const at = shop();
    at.type('ab');
    await at.keep.save(true);
    expect(at.sent).toEqual([{ content: 'ab', basedOn: 0, anew: true }]);
  });

  it('sends one save at a time', async () => {
    const at = shop();
    at.type('ab');
    const [first, second] = await Promise.all([at.keep.save(), at.keep.save()]);
    expect([first?.revision_number, second]).toEqual([2, undefined]);
  });

  it('brings two changes together, but not for ever', async () => {
    const merge = (_: string, mine: string, theirs: string) => ({ content: `${theirs}${mine}`, clashes: [] });
    const at = shop({ merge });
    at.type('b');
    at.other('x');
    expect((await at.keep.save())?.text).toBe('xb');
    at.type('c');
    at.beforeEach(() => at.other('y'));
    expect(await at.keep.save()).toBeUndefined();
    expect(at.state().save).toMatchObject({ is: 'failed', why: expect.stringContaining('keeps saving') });
    expect(at.sent).toHaveLength(5);
  });
});

describe('content that is saved by itself', () => {
  it('waits for a pause, and longer after a save that failed', async () => {
    const at = shop({ selfSaving: true });
    expect(at.pauses()).toEqual([]);
    at.type('ab');
    at.type('abc');
    expect(at.pauses()).toEqual([900]);
    at.setWeather('down');
    await at.keep.save();
    expect(at.pauses()).toEqual([15_000]);
    at.type('abcd');
    expect(at.state().save.is).toBe('failed');
    at.setWeather('fine');
    await at.keep.save();
    expect(at.pauses()).toEqual([]);
    expect(at.kept().text).toBe('abcd');
    await at.keep.save();
    expect(at.sent).toHaveLength(2);
  });

  it('waits for a pause where an earlier visit left changes', () => {
    expect(shop({ selfSaving: true, restored: true }).pauses()).toEqual([900]);
  });

  it('waits for a pause again where something was typed while it was saved', async () => {
    const at = shop({ selfSaving: true });
    at.type('ab');
    const saving = at.keep.save();
    at.type('abc');
    at.wait();
    expect(at.pauses()).toEqual([]);
    await saving;
    expect(at.pauses()).toEqual([900]);
    expect(at.draft()).toEqual({ text: 'abc', based_on: 2 });
  });

  it('waits for the person in a conflict', async () => {
    const at = shop({ selfSaving: true });
    at.type('ab');
    at.other('x');
    await at.keep.save();
    at.type('abc');
    expect(at.pauses()).toEqual([]);
    await at.keep.save();
    expect(at.sent).toHaveLength(1);
    await at.keep.settle('mine');
    expect(at.kept().text).toBe('abc');
  });

  it('is not saved after it was closed, or where there is nothing to send it to', async () => {
    const at = shop({ selfSaving: true });
    at.type('ab');
    at.keep.close();
    expect(at.pauses()).toEqual([]);
    at.type('abc');
    expect(at.pauses()).toEqual([]);
    const nowhere = shop({ selfSaving: true, nowhere: true });
    nowhere.type('ab');
    expect(nowhere.pauses()).toEqual([]);
    expect(await nowhere.keep.save()).toBeUndefined();
    expect(nowhere.state().save).toEqual({ is: 'still' });
    expect(nowhere.draft()).toEqual({ text: 'ab', based_on: 1 });
  });
});
