import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { JobStore } from './job/job-store.ts';
import { openStore, type StorePlace } from './open-store.ts';
import { testedKinds } from './testing/place.ts';
import { countingSources } from './testing/sources.ts';

const first = { text: 'title: Penstock\n', title: 'Penstock', revision: 'aa' };
const second = { text: 'title: Penstock, wider\n', title: 'Penstock, wider', revision: null };

for (const kind of testedKinds()) {
  const title = kind.missing === undefined ? kind.name : `${kind.name} (left out: ${kind.missing})`;
  describe.skipIf(kind.missing !== undefined)(`job store on ${title}`, () => {
    let place: StorePlace;
    let store: JobStore;
    beforeAll(() => kind.start());
    afterAll(() => kind.stop());
    beforeEach(async () => {
      place = kind.newPlace();
      store = await openStore(place, countingSources());
    });
    afterEach(() => store.close());

    it('holds no job on the first start, and says what it is', async () => {
      expect(await store.list()).toEqual([]);
      expect(await store.listBin()).toEqual([]);
      expect(store.kind).toBe(kind.name);
      expect(store.place).toContain('folder' in place ? place.folder : 'PostgreSQL database test');
    });

    it('gives back what was created', async () => {
      const job = await store.create(first);
      expect(job).toEqual({
        ...first,
        id: '00000000-0000-4000-8000-000000000001',
        revision_number: 1,
        saved_at: job.created_at,
        saved_by: null,
        created_at: expect.stringMatching(/^2026-01-05T06:00:\d\d\.000Z$/),
      });
      expect(await store.get(job.id)).toEqual(job);
      const { text: _, ...summary } = job;
      expect(await store.list()).toEqual([summary]);
    });

    it('keeps every revision of a job', async () => {
      const { id, created_at } = await store.create(first);
      const saved = await store.save(id, second, 1);
      expect(saved).toMatchObject({ ok: true, job: { ...second, id, revision_number: 2, created_at } });
      expect(await store.get(id)).toMatchObject({ ...second, revision_number: 2 });
      expect((await store.revisions(id))?.map((entry) => [entry.revision_number, entry.title])).toEqual([
        [2, second.title],
        [1, first.title],
      ]);
      expect(await store.revision(id, 1)).toMatchObject({ ...first, id, revision_number: 1 });
      expect(await store.revision(id, 2)).toMatchObject(second);
      expect(await store.revision(id, 3)).toBeUndefined();
    });

    it('refuses a save that is based on an older revision, and hands out the newer one', async () => {
      const { id } = await store.create(first);
      await store.save(id, second, 1);
      const late = await store.save(id, { ...first, text: 'late' }, 1);
      expect(late).toMatchObject({
        ok: false,
        code: 'JOB_CHANGED_MEANWHILE',
        newer: { ...second, revision_number: 2 },
      });
      expect(await store.get(id)).toMatchObject(second);
      expect(await store.revisions(id)).toHaveLength(2);
    });

    it('refuses a save based on a revision that never was', async () => {
      const { id } = await store.create(first);
      expect(await store.save(id, second, 7)).toMatchObject({ ok: false, code: 'JOB_CHANGED_MEANWHILE' });
    });

    it('lets exactly one of many saves at once win, through two connections', async () => {
      const { id } = await store.create(first);
      const other = await openStore(place, countingSources());
      const saves = await Promise.all(
        Array.from({ length: 10 }, (_, n) =>
          (n % 2 === 0 ? store : other).save(id, { ...second, text: `save ${n}` }, 1),
        ),
      );
      await other.close();
      const winners = saves.filter((outcome) => outcome.ok);
      expect(winners).toHaveLength(1);
      expect(await store.get(id)).toEqual(winners[0]?.job);
      for (const loser of saves) if (!loser.ok) expect(loser.code).toBe('JOB_CHANGED_MEANWHILE');
      expect(await store.revisions(id)).toHaveLength(2);
    });

    it('lists the newest save first', async () => {
      const a = await store.create({ ...first, title: 'a' });
      const b = await store.create({ ...first, title: 'b' });
      expect((await store.list()).map((job) => job.id)).toEqual([b.id, a.id]);
      await store.save(a.id, second, 1);
      expect((await store.list()).map((job) => job.id)).toEqual([a.id, b.id]);
    });

    it('duplicates the newest text under a new identifier', async () => {
      const { id } = await store.create(first);
      await store.save(id, second, 1);
      const copy = await store.duplicate(id);
      expect(copy).toMatchObject({ ...second, revision_number: 1 });
      expect(copy?.id).not.toBe(id);
      expect(await store.list()).toHaveLength(2);
      expect(await store.revisions(id)).toHaveLength(2);
    });

    it('moves a job into the bin and back, with its revisions', async () => {
      const { id } = await store.create(first);
      await store.save(id, second, 1);
      const before = await store.get(id);
      expect(await store.bin(id)).toBe(true);
      expect(await store.bin(id)).toBe(false);
      expect(await store.list()).toEqual([]);
      expect(await store.get(id)).toBeUndefined();
      expect(await store.revisions(id)).toBeUndefined();
      expect(await store.revision(id, 1)).toBeUndefined();
      expect(await store.duplicate(id)).toBeUndefined();
      expect(await store.save(id, first, 2)).toEqual({ ok: false, code: 'JOB_NOT_FOUND' });
      expect(await store.listBin()).toMatchObject([
        { id, title: second.title, deleted_at: expect.stringMatching(/Z$/) },
      ]);
      expect(await store.restore(id)).toEqual(before);
      expect(await store.restore(id)).toBeUndefined();
      expect(await store.listBin()).toEqual([]);
      expect(await store.revisions(id)).toHaveLength(2);
    });

    it('finds no job under an unknown identifier', async () => {
      expect(await store.get('none')).toBeUndefined();
      expect(await store.revisions('none')).toBeUndefined();
      expect(await store.duplicate('none')).toBeUndefined();
      expect(await store.restore('none')).toBeUndefined();
      expect(await store.bin('none')).toBe(false);
      expect(await store.save('none', first, 1)).toEqual({ ok: false, code: 'JOB_NOT_FOUND' });
    });

    it('keeps nothing of a create that fails half-way', async () => {
      const stuck = await openStore(place, { now: () => new Date(0), newId: () => 'same' });
      await stuck.create(first);
      await expect(stuck.create(second)).rejects.toMatchObject({ code: 'STORE_UNAVAILABLE' });
      expect(await stuck.get('same')).toMatchObject(first);
      expect(await stuck.list()).toHaveLength(1);
      await stuck.close();
    });

    it('finds everything again after closing and opening', async () => {
      const { id } = await store.create(first);
      await store.save(id, second, 1);
      const before = [await store.get(id), await store.revisions(id)];
      await store.close();
      store = await openStore(place, countingSources());
      expect([await store.get(id), await store.revisions(id)]).toEqual(before);
    });

    it('keeps long text, other alphabets and quotes to the letter', async () => {
      const text = `title: "Шов №7 – 继手 'q' 🔥; drop table job; --"\n${'# ½ in ≈ 12,7 mm\r\n'.repeat(8000)}`;
      const { id } = await store.create({ ...first, text });
      expect((await store.get(id))?.text).toBe(text);
    });
  });
}
