import type { Commissioning, CommissioningSave } from '@furrow/contract';
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../api/index.ts';
import { MemoryStorage } from '../../testing/index.ts';
import { isRigUnsaved, openRig } from './rig.ts';
import { rigDraftOf } from './rig-draft.ts';
import { rigSaveWords } from './rig-save-words.ts';

const JOB = '00000000-0000-4000-8000-000000000001';
const AT = '2026-01-05T06:00:00.000Z';
const reading = (text: string) => ({ text, value: null, note: '' });

function saved(revision: number, readings: Record<string, string> = {}): Commissioning {
  return {
    job_id: JOB,
    revision_number: revision,
    saved_at: revision === 0 ? null : AT,
    readings: Object.fromEntries(
      Object.entries(readings).map(([id, text]) => [id, { ...reading(text), at: AT }]),
    ),
    ticks: {},
    findings: [],
  };
}

/** A store with the same lock as the real one, and a clock that the test moves. */
function shop(first = saved(0)) {
  let kept = first;
  let down = false;
  const timers: (() => void)[] = [];
  const memory = new MemoryStorage();
  const send = async (save: CommissioningSave): Promise<Reply<Commissioning>> => {
    if (down) return { ok: false, failure: { message: 'The server does not answer.', issues: [] } };
    if (save.based_on !== kept.revision_number) {
      return { ok: false, failure: { message: 'Saved meanwhile.', issues: [], newer: kept } };
    }
    const texts = Object.fromEntries(Object.entries(save.readings).map(([id, { text }]) => [id, text]));
    kept = { ...saved(kept.revision_number + 1, texts), ticks: {} };
    kept.ticks = Object.fromEntries(save.ticks.map((id) => [id, AT]));
    return { ok: true, value: kept };
  };
  const later = (what: () => void): (() => void) => {
    timers.push(what);
    return () => void timers.splice(timers.indexOf(what), timers.includes(what) ? 1 : 0);
  };
  return {
    kept: () => kept,
    put: (next: Commissioning) => {
      kept = next;
    },
    setDown: (now: boolean) => {
      down = now;
    },
    timers,
    memory,
    open: (start = first) => openRig(JOB, start, rigDraftOf(memory, JOB), { send, memory, later }),
  };
}

describe('the record of a rig', () => {
  it('is saved after a pause, and forgets its draft then', async () => {
    const at = shop();
    const rig = at.open();
    expect(rigSaveWords(rig.store.get())).toBe('nothing entered yet');
    rig.read('current', reading('800 A'));
    rig.tick('lead', true);
    expect(rigSaveWords(rig.store.get())).toBe('not saved yet');
    expect(at.timers).toHaveLength(1);
    expect(rigDraftOf(at.memory, JOB)?.record.readings['current']?.text).toBe('800 A');
    await rig.saveNow();
    expect(at.kept().readings['current']?.text).toBe('800 A');
    expect(Object.keys(at.kept().ticks)).toEqual(['lead']);
    expect(isRigUnsaved(rig.store.get())).toBe(false);
    expect(rigDraftOf(at.memory, JOB)).toBeUndefined();
    expect(rigSaveWords(rig.store.get())).toContain('revision 1');
  });

  it('says that it is not saved while the server is away, and is tried again', async () => {
    const at = shop();
    const rig = at.open();
    at.setDown(true);
    rig.read('current', reading('800 A'));
    await rig.saveNow();
    expect(rigSaveWords(rig.store.get())).toMatch(/^not saved: The server does not answer\./u);
    expect(at.timers).toHaveLength(1);
    at.setDown(false);
    await rig.saveNow();
    expect(at.kept().readings['current']?.text).toBe('800 A');
  });

  it('brings back what an earlier visit left unsaved', async () => {
    const at = shop();
    const before = at.open();
    before.read('current', reading('800 A'));
    before.close();
    expect(at.timers).toHaveLength(0);
    const rig = at.open();
    expect(rig.store.get().record.readings['current']?.text).toBe('800 A');
    expect(isRigUnsaved(rig.store.get())).toBe(true);
  });

  it('brings together what two people entered at different checks', async () => {
    const at = shop();
    const rig = at.open();
    at.put(saved(1, { stick_out: '100 mm' }));
    rig.read('current', reading('800 A'));
    await rig.saveNow();
    expect(Object.keys(at.kept().readings).sort()).toEqual(['current', 'stick_out']);
    expect(rig.store.get().record.readings['stick_out']?.text).toBe('100 mm');
  });

  it.each([
    ['mine', '800 A'],
    ['theirs', '700 A'],
  ] as const)('asks where both read the same check: keeps %s', async (keep, text) => {
    const at = shop();
    const rig = at.open();
    at.put(saved(1, { current: '700 A' }));
    rig.read('current', reading('800 A'));
    rig.read('stick_out', reading('100 mm'));
    await rig.saveNow();
    expect(rig.store.get().newer).toMatchObject({ saved: at.kept(), clashes: ['current'] });
    expect(rigSaveWords(rig.store.get())).toMatch(/somebody else saved other readings/u);
    expect(at.kept().readings['current']?.text).toBe('700 A');
    await rig.settle(keep);
    expect(at.kept().readings['current']?.text).toBe(text);
    expect(at.kept().readings['stick_out']?.text).toBe('100 mm');
    expect(isRigUnsaved(rig.store.get())).toBe(false);
  });

  it('takes a reading away when its text and note are empty', () => {
    const rig = shop().open(saved(1, { current: '700 A' }));
    rig.read('current', reading(' '));
    expect(rig.store.get().record.readings).toEqual({});
  });
});
