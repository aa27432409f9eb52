import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openStore, type StorePlace } from './open-store.ts';
import type { Store } from './store.ts';
import { testedKinds } from './testing/place.ts';
import { countingSources } from './testing/sources.ts';

const yard = { text: 'furrow_kit: 1\ntitle: Yard\n', title: 'Yard', revision: 'aa' };
const wider = { text: 'furrow_kit: 1\ntitle: Yard, wider\n', title: 'Yard, wider', revision: null };
const job = { text: 'title: Penstock\n', title: 'Penstock', revision: null };
const entry = {
  readings: { open_circuit: { text: '72 V', value: 72, note: 'Шов № 7' } },
  ticks: ['power-1'],
  findings: [{ id: 'f', symptoms: { hot_joint: 'yes' }, cause: 'loose_joint', note: '' }],
};
const nothing = { readings: {}, ticks: [], findings: [] };
const time = expect.stringMatching(/^2026-01-05T06:00:\d\d\.000Z$/);

for (const kind of testedKinds()) {
  const title = kind.missing === undefined ? kind.name : `${kind.name} (left out: ${kind.missing})`;
  describe.skipIf(kind.missing !== undefined)(`on ${title}`, () => {
    let place: StorePlace;
    let store: Store;
    const reopened = async (): Promise<Store> => {
      await store.close();
      store = await openStore(place, countingSources());
      return store;
    };
    beforeAll(() => kind.start());
    afterAll(() => kind.stop());
    beforeEach(async () => {
      place = kind.newPlace();
      store = await openStore(place, countingSources());
    });
    afterEach(() => store.close());

    describe.each(['kit', 'knowledge', 'gauge'] as const)('the file of the shop’s %s', (name) => {
      it('is none at first', async () => {
        expect(await store[name].get()).toBeUndefined();
        expect(await store[name].revisions()).toEqual([]);
        expect(await store[name].revision(1)).toBeUndefined();
      });

      it('is kept with every revision', async () => {
        const saved = await store[name].save(yard, 0);
        expect(saved).toEqual({
          ok: true,
          saved: { ...yard, revision_number: 1, saved_at: time, saved_by: null },
        });
        await store[name].save(wider, 1);
        const file = (await reopened())[name];
        expect(await file.get()).toEqual({ ...wider, revision_number: 2, saved_at: time, saved_by: null });
        expect(await file.revision(1)).toEqual(saved.ok && saved.saved);
        expect((await file.revisions()).map((each) => [each.revision_number, each.title])).toEqual([
          [2, wider.title],
          [1, yard.title],
        ]);
      });

      it.each([0, 2, 7])(
        'is not overwritten by a save based on revision %i when it is at 1',
        async (base) => {
          await store[name].save(yard, 0);
          expect(await store[name].save(wider, base)).toEqual({
            ok: false,
            newer: await store[name].get(),
          });
          expect(await store[name].get()).toMatchObject({ ...yard, revision_number: 1 });
        },
      );

      it('is erased but for its newest revision', async () => {
        expect(await store[name].eraseEarlier()).toBe(0);
        await store[name].save(yard, 0);
        await store[name].save(wider, 1);
        expect(await store[name].eraseEarlier()).toBe(1);
        expect(await store[name].revision(1)).toBeUndefined();
        expect(await store[name].get()).toMatchObject({ ...wider, revision_number: 2 });
      });

      it('is saved once when it is sent again', async () => {
        await store[name].save(yard, 0);
        expect(await store[name].save(yard, 0)).toMatchObject({ ok: true, saved: { revision_number: 1 } });
        expect(await store[name].revisions()).toHaveLength(1);
      });

      it('is not begun at a revision that never was', async () => {
        expect(await store[name].save(yard, 3)).toEqual({
          ok: false,
          newer: undefined,
        });
        expect(await store[name].get()).toBeUndefined();
      });

      it.each([0, 1])('has one winner of many saves at once on revision %i', async (base) => {
        if (base === 1) await store[name].save(yard, 0);
        const other = await openStore(place, countingSources());
        const saves = await Promise.all(
          Array.from({ length: 8 }, (_, turn) =>
            (turn % 2 ? store : other)[name].save({ ...wider, text: `by ${turn}` }, base),
          ),
        );
        await other.close();
        const winners = saves.filter((outcome) => outcome.ok);
        expect(winners).toHaveLength(1);
        expect(await store[name].get()).toEqual(winners[0]?.saved);
        expect(await store[name].revisions()).toHaveLength(base + 1);
      });
    });

    describe('the readings of a job', () => {
      let id: string;
      beforeEach(async () => {
        ({ id } = await store.create(job));
      });

      it('are none at first', async () => {
        expect(await store.commissioning.get(id)).toEqual({
          job_id: id,
          revision_number: 0,
          saved_at: null,
          readings: {},
          ticks: {},
          findings: [],
        });
      });

      it('are kept with the time of each entry', async () => {
        const saved = await store.commissioning.save(id, entry, 0);
        if (!saved.ok) throw new Error(saved.code);
        const { saved_at } = saved.commissioning;
        expect(saved.commissioning).toEqual({
          job_id: id,
          revision_number: 1,
          saved_at: time,
          readings: { open_circuit: { ...entry.readings.open_circuit, at: saved_at } },
          ticks: { 'power-1': saved_at },
          findings: [{ ...entry.findings[0], at: saved_at }],
        });
        const more = { ...entry, ticks: ['power-1', 'air-1'] };
        const again = await store.commissioning.save(id, more, 1);
        if (!again.ok) throw new Error(again.code);
        expect(again.commissioning.ticks).toEqual({
          'power-1': saved_at,
          'air-1': again.commissioning.saved_at,
        });
        expect(again.commissioning.readings).toEqual(saved.commissioning.readings);
        expect(again.commissioning.saved_at).not.toBe(saved_at);
        expect(await (await reopened()).commissioning.get(id)).toEqual(again.commissioning);
      });

      it.each([0, 2, 7])('are not overwritten by a save based on revision %i when at 1', async (base) => {
        await store.commissioning.save(id, entry, 0);
        const before = await store.commissioning.get(id);
        expect(await store.commissioning.save(id, nothing, base)).toEqual({
          ok: false,
          code: 'COMMISSIONING_CHANGED_MEANWHILE',
          newer: before,
        });
        expect(await store.commissioning.get(id)).toEqual(before);
      });

      it('have one winner of many saves at once', async () => {
        const other = await openStore(place, countingSources());
        const saves = await Promise.all(
          Array.from({ length: 8 }, (_, turn) =>
            (turn % 2 ? store : other).commissioning.save(id, { ...entry, ticks: [`row-${turn}`] }, 0),
          ),
        );
        await other.close();
        const winners = saves.filter((outcome) => outcome.ok);
        expect(winners).toHaveLength(1);
        expect(await store.commissioning.get(id)).toEqual(winners[0]?.commissioning);
      });

      it('belong to their job alone: not to a copy, not to one in the bin, and back with it', async () => {
        await store.commissioning.save(id, entry, 0);
        const before = await store.commissioning.get(id);
        const copy = await store.duplicate(id);
        expect(await store.commissioning.get(copy?.id ?? '')).toMatchObject({ revision_number: 0 });
        await store.bin(id);
        expect(await store.commissioning.get(id)).toBeUndefined();
        expect(await store.commissioning.save(id, entry, 1)).toEqual({ ok: false, code: 'JOB_NOT_FOUND' });
        await store.restore(id);
        expect(await store.commissioning.get(id)).toEqual(before);
        expect(await store.commissioning.save('none', entry, 0)).toEqual({
          ok: false,
          code: 'JOB_NOT_FOUND',
        });
      });

      it('leave the revisions of the job as they are', async () => {
        await store.commissioning.save(id, entry, 0);
        expect(await store.get(id)).toMatchObject({ ...job, revision_number: 1 });
      });
    });

    describe('erasing for good', () => {
      const everything = async (): Promise<string> => {
        const found = [await store.list(), await store.listBin(), await store.commissioning.get('none')];
        for (const { id } of await store.list()) {
          for (const each of (await store.revisions(id)) ?? []) {
            found.push((await store.revision(id, each.revision_number)) as never);
          }
        }
        return JSON.stringify(found);
      };

      it('takes a job in the bin away with its revisions, readings and papers, and no other', async () => {
        const secret = { ...job, text: 'title: secret\n' };
        const { id } = await store.create(secret);
        const other = await store.create(job);
        await store.save(id, job, 1);
        await store.commissioning.save(id, entry, 0);
        await store.printed.add(id, {
          paper: 'a',
          revision_number: 1,
          revision: 'aa',
          kit_revision: null,
          knowledge_id: null,
        });
        expect(await store.erase(id)).toBe(false);
        await store.bin(id);
        expect(await store.erase(id)).toBe(true);
        expect(await store.erase(id)).toBe(false);
        expect(await store.restore(id)).toBeUndefined();
        expect(await store.list()).toHaveLength(1);
        // Under the same identifier again, nothing of the erased one comes back.
        await store.createAs(id, job);
        expect(await store.commissioning.get(id)).toMatchObject({ revision_number: 0, ticks: {} });
        expect(await store.printed.list(id)).toEqual([]);
        expect(await everything()).not.toContain('secret');
        expect(await store.get(other.id)).toEqual(other);
      });

      it('takes away what stood in earlier revisions, so that a crew taken out of a job is gone', async () => {
        const { id } = await store.create({ ...job, text: 'crew: Kim\n' });
        await store.save(id, { ...job, text: 'crew: none\n' }, 1);
        expect(await everything()).toContain('Kim');
        expect(await store.eraseEarlier(id)).toBe(1);
        expect(await everything()).not.toContain('Kim');
        expect(await store.save(id, job, 2)).toMatchObject({ ok: true, job: { revision_number: 3 } });
        expect(await store.eraseEarlier('none')).toBeUndefined();
        await store.kit.save(yard, 0);
        await store.kit.save(wider, 1);
        expect(await store.kit.eraseEarlier()).toBe(1);
        expect(await store.kit.revisions()).toHaveLength(1);
      });

      it('takes the readings of a job away with all their revisions', async () => {
        const { id } = await store.create(job);
        await store.commissioning.save(id, entry, 0);
        await store.commissioning.save(id, nothing, 1);
        expect(await store.commissioning.erase(id)).toBe(true);
        expect(await store.commissioning.erase(id)).toBe(false);
        expect(await store.commissioning.get(id)).toMatchObject({ revision_number: 0, readings: {} });
        expect(await store.commissioning.save(id, entry, 0)).toMatchObject({ ok: true });
      });
    });

    describe('what was run and gauged on a job', () => {
      const first = { text: 'furrow_readings: 1\n', title: '2026-03-04', revision: 'aa' };
      const second = { ...first, text: 'furrow_readings: 1\ngauge: Lehre № 3\n', revision: null };
      let id: string;
      beforeEach(async () => {
        ({ id } = await store.create(job));
      });

      it('is nothing at first, and kept with every revision', async () => {
        expect(await store.readings.get(id)).toBeNull();
        const saved = await store.readings.save(id, first, 0);
        expect(saved).toEqual({
          ok: true,
          saved: { ...first, revision_number: 1, saved_at: time, saved_by: null },
        });
        await store.readings.save(id, second, 1);
        const { readings } = await reopened();
        expect(await readings.get(id)).toEqual({
          ...second,
          revision_number: 2,
          saved_at: time,
          saved_by: null,
        });
        expect(await readings.revision(id, 1)).toEqual(saved.ok && saved.saved);
        expect((await readings.revisions(id))?.map((each) => each.revision_number)).toEqual([2, 1]);
      });

      it.each([0, 2])('is not overwritten by a save based on revision %i when it is at 1', async (base) => {
        await store.readings.save(id, first, 0);
        expect(await store.readings.save(id, second, base)).toEqual({
          ok: false,
          code: 'READINGS_CHANGED_MEANWHILE',
          newer: { ...first, revision_number: 1, saved_at: time, saved_by: null },
        });
        expect(await store.readings.get(id)).toMatchObject(first);
      });

      it('goes into the bin with its job and is erased with it, and belongs to no copy', async () => {
        await store.readings.save(id, first, 0);
        const copy = await store.duplicate(id);
        expect(await store.readings.get(copy?.id ?? '')).toBeNull();
        await store.bin(id);
        expect(await store.readings.get(id)).toBeUndefined();
        expect(await store.readings.revisions(id)).toBeUndefined();
        expect(await store.readings.revision(id, 1)).toBeUndefined();
        expect(await store.readings.save(id, second, 1)).toEqual({ ok: false, code: 'JOB_NOT_FOUND' });
        await store.restore(id);
        expect(await store.readings.get(id)).toMatchObject(first);
        await store.bin(id);
        await store.erase(id);
        // the identifier may come back, what was measured may not
        await store.createAs(id, job);
        expect(await store.readings.get(id)).toBeNull();
      });

      it('names the files that were measured, in every revision', async () => {
        const [one, other] = ['a'.repeat(64), 'b'.repeat(64)];
        await store.readings.save(id, { ...first, text: `files: [{ sha256: ${one} }]` }, 0);
        await store.readings.save(
          id,
          { ...first, text: `files: [{ sha256: ${other} }, { sha256: ${other} }]` },
          1,
        );
        expect([...(await store.readings.hashesOf(id))].sort()).toEqual([one, other]);
        expect(await store.readings.hasFile(one)).toBe(true);
        expect(await store.readings.hasFile('c'.repeat(64))).toBe(false);
        await store.readings.erase(id);
        expect(await store.readings.hashesOf(id)).toEqual([]);
        expect(await store.readings.hasFile(other)).toBe(false);
      });

      it('is erased for good on its own', async () => {
        expect(await store.readings.erase(id)).toBe(false);
        await store.readings.save(id, first, 0);
        expect(await store.readings.erase(id)).toBe(true);
        expect(await store.readings.get(id)).toBeNull();
      });
    });

    describe('the papers handed out', () => {
      const card = {
        paper: 'set-up-card.pdf',
        revision_number: 1,
        revision: 'aa',
        kit_revision: null,
        knowledge_id: null,
      };
      let id: string;
      beforeEach(async () => {
        ({ id } = await store.create(job));
      });

      it('are none at first, and kept newest first, each with its time', async () => {
        expect(await store.printed.list(id)).toEqual([]);
        expect(await store.printed.add(id, card)).toBe(true);
        const again = { ...card, revision_number: 2, revision: 'bb', kit_revision: 'cc' };
        expect(await store.printed.add(id, again)).toBe(true);
        const { printed } = await reopened();
        expect(await printed.list(id)).toEqual([
          { ...again, printed_at: time, released_by: null },
          { ...card, printed_at: time, released_by: null },
        ]);
      });

      it('belong to their job alone: not to a copy, not to one in the bin, and back with it', async () => {
        await store.printed.add(id, card);
        const before = await store.printed.list(id);
        const copy = await store.duplicate(id);
        expect(await store.printed.list(copy?.id ?? '')).toEqual([]);
        await store.bin(id);
        expect(await store.printed.list(id)).toBeUndefined();
        expect(await store.printed.add(id, card)).toBe(false);
        await store.restore(id);
        expect(await store.printed.list(id)).toEqual(before);
        expect(await store.printed.add('none', card)).toBe(false);
      });
    });

    describe('the faults found', () => {
      const found = { id: 'a', cause: 'loose_joint', symptoms: { hot_joint: 'yes' } };

      it('are kept, each once', async () => {
        expect(await store.faultCases.list()).toEqual([]);
        await store.faultCases.put(found);
        await store.faultCases.put({ ...found, id: 'b' });
        await store.faultCases.put({ ...found, cause: 'wet_air', symptoms: {} });
        const { faultCases } = await reopened();
        const kept = [...(await faultCases.list())].sort((one, two) => one.id.localeCompare(two.id));
        expect(kept).toEqual([
          { id: 'a', cause: 'wet_air', symptoms: {} },
          { ...found, id: 'b' },
        ]);
      });

      it('can be taken out again', async () => {
        await store.faultCases.put(found);
        expect(await store.faultCases.remove('b')).toBe(false);
        expect(await store.faultCases.remove('a')).toBe(true);
        expect(await store.faultCases.list()).toEqual([]);
      });
    });
  });
}
