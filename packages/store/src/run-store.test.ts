import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openStore, type StorePlace } from './open-store.ts';
import type { NewRun } from './run/run-store.ts';
import type { Store } from './store.ts';
import { testedKinds } from './testing/place.ts';
import { countingSources } from './testing/sources.ts';

const sha256 = 'ab'.repeat(32);
const file = { sha256, bytes: 3_000_000_000 };
const given: NewRun = {
  id: 'run-1',
  name: 'bay-2.csv',
  revision_number: 1,
  kit_number: null,
  knowledge_number: 2,
  logger: 'furrow_logger: 1\n',
  rehearsal: false,
  source: null,
  original: file,
};
const found = { report: '{"verdict":["Шов"]}', summary: '{"passes":1}', trouble: null };
const job = { text: 'title: Penstock\n', title: 'Penstock', revision: 'aa' };

for (const kind of testedKinds()) {
  const title = kind.missing === undefined ? kind.name : `${kind.name} (left out: ${kind.missing})`;
  describe.skipIf(kind.missing !== undefined)(`on ${title}`, () => {
    let place: StorePlace;
    let store: Store;
    let id: string;
    let moment: number;
    const now = (): Date => new Date(moment++);
    /** Lets time go by [s]. */
    const lapse = (seconds = 61): void => {
      moment += 1000 * seconds;
    };
    beforeAll(() => kind.start());
    afterAll(() => kind.stop());
    beforeEach(async () => {
      place = kind.newPlace();
      moment = Date.UTC(2026, 0, 5);
      store = await openStore(place, { ...countingSources(), now });
      id = (await store.create(job)).id;
    });
    afterEach(() => store.close());

    it('a run is kept with its job, and found again', async () => {
      const kept = await store.runs.add(id, given);
      expect(kept).toEqual({ ...given, job_id: id, revision: 'aa', begun_at: expect.any(String) });
      await store.close();
      store = await openStore(place, countingSources());
      expect(await store.runs.get('run-1')).toEqual(kept);
      expect(await store.runs.list(id)).toEqual([{ ...kept, review: null }]);
      expect(await store.runs.live()).toEqual([]);
      expect(await store.runs.hasFile(sha256)).toBe(true);
    });

    it('a run that is sent again is kept once, as it was', async () => {
      const kept = await store.runs.add(id, given);
      expect(await store.runs.add(id, { ...given, name: 'other' })).toEqual(kept);
      expect(await store.runs.list(id)).toHaveLength(1);
    });

    it('there is no run of a job, or of a revision, that is not there', async () => {
      expect(await store.runs.add('none', given)).toBeUndefined();
      expect(await store.runs.add(id, { ...given, revision_number: 2 })).toBeUndefined();
      expect(await store.runs.list('none')).toBeUndefined();
      await store.bin(id);
      expect(await store.runs.add(id, given)).toBeUndefined();
    });

    it('a live run is under way until it has its file, once', async () => {
      await store.runs.add(id, { ...given, original: null, source: '{"kind":"http"}', rehearsal: true });
      expect((await store.runs.live()).map((each) => [each.id, each.source, each.rehearsal])).toEqual([
        ['run-1', '{"kind":"http"}', true],
      ]);
      expect(await store.runs.claimReview('1', 'a')).toEqual({ run: undefined, held: false });
      expect(await store.runs.end('run-1', file)).toMatchObject({ original: file });
      expect(await store.runs.end('run-1', file)).toMatchObject({ original: file });
      expect(await store.runs.end('run-1', { sha256: 'cd'.repeat(32), bytes: 1 })).toBeUndefined();
      expect(await store.runs.end('none', file)).toBeUndefined();
      expect(await store.runs.live()).toEqual([]);
    });

    it('each version reviews a run once; the newest review is listed, and all are kept', async () => {
      await store.runs.add(id, given);
      expect((await store.runs.claimReview('1', 'a')).run).toMatchObject({ id: 'run-1' });
      await store.runs.reviewed('run-1', '1', found);
      expect(await store.runs.claimReview('1', 'b')).toEqual({ run: undefined, held: false });
      expect((await store.runs.claimReview('2', 'c')).run).toMatchObject({ id: 'run-1' });
      const trouble = { report: null, summary: null, trouble: 'cannot be read' };
      const listed = async () => (await store.runs.list(id))?.[0]?.review;
      await store.runs.reviewed('run-1', '2', trouble);
      expect((await store.runs.reviews('run-1')).map((each) => each.program_version)).toEqual(['2', '1']);
      // what was found stays to be seen where a newer version finds nothing
      expect(await listed()).toMatchObject({ program_version: '1', summary: found.summary });
      await store.runs.reviewed('run-1', '3', { ...found, summary: '{"passes":2}' });
      expect(await listed()).toEqual({
        program_version: '3',
        reviewed_at: expect.any(String),
        summary: '{"passes":2}',
        trouble: null,
      });
      expect(await store.runs.reviews('run-1')).toMatchObject([{ report: found.report }, trouble, found]);
    });

    it('a file that ends the program each time is given up, behind those that were not tried', async () => {
      await store.runs.add(id, given);
      const claimed = async (claim: string) => (await store.runs.claimReview('1', claim)).run?.id;
      expect(await claimed('a')).toBe('run-1');
      await store.runs.add(id, { ...given, id: 'run-2' });
      expect(await claimed('b')).toBe('run-2');
      await store.runs.reviewed('run-2', '1', found);
      for (const claim of ['c', 'd']) {
        lapse();
        expect(await claimed(claim)).toBe('run-1');
      }
      lapse();
      expect(await store.runs.claimReview('1', 'e')).toEqual({ run: undefined, held: false });
      expect((await store.runs.reviews('run-1')).length).toBe(0);
      await store.runs.forgetReviews('run-1', '1');
      expect(await claimed('f')).toBe('run-1');
    });

    it('of programs that ask at once, each run is reviewed by one, until its claim lapses', async () => {
      const other = await openStore(place, { ...countingSources(), now });
      for (const run of ['run-1', 'run-2', 'run-3']) await store.runs.add(id, { ...given, id: run });
      const asked = [store, other, store, other, store, other];
      const turns = await Promise.all(asked.map(({ runs }, n) => runs.claimReview('1', `claim ${n}`)));
      const ids = turns.flatMap(({ run }) => (run === undefined ? [] : [run.id]));
      expect(ids.sort()).toEqual(['run-1', 'run-2', 'run-3']);
      expect(turns.filter(({ run }) => run === undefined)).toEqual(
        [1, 2, 3].map(() => ({ run: undefined, held: true })),
      );
      // an answer that was lost is asked for again, and counts once
      const first = turns.findIndex(({ run }) => run !== undefined);
      expect(await other.runs.claimReview('1', `claim ${first}`)).toEqual(turns[first]);
      lapse(45);
      await store.runs.holdReview(`claim ${first}`);
      lapse(45);
      const next = [await other.runs.claimReview('1', 'x'), await other.runs.claimReview('1', 'y')];
      const held = turns[first]!.run!.id;
      expect(next.map(({ run }) => run?.id).sort()).toEqual(ids.filter((run) => run !== held));
      expect(await other.runs.claimReview('1', 'z')).toEqual({ run: undefined, held: true });
      await other.close();
    });

    it('a run is erased with its reviews, by itself and with its job', async () => {
      await store.runs.add(id, given);
      await store.runs.add(id, { ...given, id: 'run-2' });
      await store.runs.reviewed('run-1', '1', found);
      expect(await store.runs.erase('run-1')).toMatchObject({ id: 'run-1', original: file });
      expect(await store.runs.erase('run-1')).toBeUndefined();
      expect(await store.runs.reviews('run-1')).toEqual([]);
      expect(await store.runs.hasFile(sha256)).toBe(true);
      await store.runs.reviewed('run-2', '1', found);
      expect(await store.runs.hashesOf(id)).toEqual([sha256]);
      await store.bin(id);
      expect(await store.erase(id)).toBe(true);
      expect(await store.runs.get('run-2')).toBeUndefined();
      expect(await store.runs.hasFile(sha256)).toBe(false);
    });

    it('logger descriptions are kept once each, and erased', async () => {
      const logger = { revision: 'f0', name: 'bay 2', text: 'furrow_logger: 1\nname: bay 2\n' };
      await store.loggers.put(logger);
      await store.loggers.put({ ...logger, text: `${logger.text}# again\n` });
      expect(await store.loggers.list()).toEqual([{ ...logger, saved_at: expect.any(String) }]);
      await store.loggers.erase('f0');
      await store.loggers.erase('f0');
      expect(await store.loggers.list()).toEqual([]);
      await store.loggers.put(logger);
      expect(await store.loggers.list()).toHaveLength(1);
    });
  });
}
