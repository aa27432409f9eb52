import { sql } from 'kysely';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Database } from './database/database.ts';
import { openPostgres } from './database/postgres-database.ts';
import { openSqlite } from './database/sqlite-database.ts';
import { entryHash } from './history/change.ts';
import { COMPANY, type Company, openCompany, type StorePlace } from './index.ts';
import { testedKinds } from './testing/place.ts';
import { countingSources } from './testing/sources.ts';

const ADA = { id: 'a', name: 'Ada Kern' };
const job = { text: 'title: Penstock\n', title: 'Penstock', revision: 'r' };
const paper = { paper: 'x.pdf', revision_number: 1, revision: 'r', kit_revision: null, knowledge_id: 'k' };

describe.each(testedKinds())('the history in $name', ({ missing, start, stop, newPlace }) => {
  if (missing !== undefined) {
    it.skip(missing, () => undefined);
    return;
  }
  let place: StorePlace;
  let company: Company;
  beforeAll(start);
  afterAll(stop);
  beforeEach(async () => {
    place = newPlace();
    company = await openCompany(place, countingSources());
    return () => company.close();
  });
  /** Does what a hand in the database can do. */
  const meddle = async (work: (database: Database) => Promise<unknown>): Promise<void> => {
    const database = 'url' in place ? openPostgres(place.url) : openSqlite(place.folder);
    try {
      await work(database);
    } finally {
      await database.kysely.destroy();
    }
  };
  const unlock = async ({ kysely, kind }: Database): Promise<void> => {
    const drops = {
      sqlite: ['drop trigger history_no_update', 'drop trigger history_no_delete'],
      postgresql: ['drop trigger history_no_change on history'],
    };
    for (const drop of drops[kind]) await sql.raw(drop).execute(kysely);
  };
  const workOf = async () => {
    const store = company.shop('main').by(ADA);
    const { id } = await store.create(job);
    await store.save(id, { ...job, text: 'title: Penstock 2\n' }, 1);
    await store.kit.save({ text: 'k', title: '', revision: null }, 0);
    await store.printed.add(id, paper);
    await store.faultCases.put({ id: 'f', cause: 'wet_air', symptoms: {} });
    const run = { id: 'run', name: '', revision_number: 1, kit_number: null, knowledge_number: null };
    await store.runs.add(id, { ...run, logger: null, rehearsal: false, source: null, original: null });
    await store.runs.end('run', { sha256: 'ab'.repeat(32), bytes: 1 });
    await company.people.addAccount({ id: 'a', name: 'Ada Kern', administrator: true });
    await company.peopleBy(ADA).addAccount({ id: 'b', name: 'Bo', administrator: false });
    await company.people.setRights('b', { administrator: false, shut: false, shops: { main: 'viewer' } });
    await company.people.setPassword('b', 'scrypt$…');
    await company.people.addMachine({ id: 'm', shop: 'main', name: 'logger' }, 'hash');
    return { store, id };
  };

  it('tells who did what, from what to what', async () => {
    const { store, id } = await workOf();
    const entries = await store.history.list({ limit: 50 });
    expect(entries.map(({ act, kind, before, after, who }) => [act, kind, before, after, who.name])).toEqual([
      ['end', 'run', null, null, 'Ada Kern'],
      ['add', 'run', null, id, 'Ada Kern'],
      ['add', 'fault', null, null, 'Ada Kern'],
      ['release', 'paper', null, `${id} x.pdf`, 'Ada Kern'],
      ['save', 'kit', null, '1', 'Ada Kern'],
      ['save', 'job', '1', '2', 'Ada Kern'],
      ['save', 'job', null, '1', 'Ada Kern'],
    ]);
    expect((await store.history.list({ limit: 1, before: 4 }))[0]?.number).toBe(3);
    expect(await store.history.list({ limit: 9, kind: 'job', thing: id })).toHaveLength(2);
    expect((await store.revisions(id))?.map((each) => each.saved_by)).toEqual(['Ada Kern', 'Ada Kern']);
    expect((await store.printed.list(id))?.[0]?.released_by).toBe('Ada Kern');
    const rights = (await company.history.list({ limit: 9, thing: 'b' })).map((each) => [
      each.act,
      each.who.name,
      each.after,
    ]);
    expect(rights).toEqual([
      ['set password', null, null],
      ['set', null, '{"administrator":false,"shut":false,"shops":{"main":"viewer"}}'],
      ['add', 'Ada Kern', '{"administrator":false,"shut":false,"shops":{}}'],
    ]);
  });

  it('agrees with what is kept, whatever was saved, binned and erased', async () => {
    const { store, id } = await workOf();
    expect(await company.audit()).toMatchObject({ problems: [], held: 12 });
    await store.eraseEarlier(id);
    await store.bin(id);
    await store.restore(id);
    await store.bin(id);
    expect((await company.audit()).problems).toEqual([]);
    await store.erase(id);
    await store.faultCases.remove('f');
    await company.people.eraseMachine('m');
    const report = await company.audit();
    expect(report.problems).toEqual([]);
    expect(report.histories.map(({ shop }) => shop)).toEqual([COMPANY, 'main']);
  });

  it('has no entry for what changed nothing', async () => {
    const { store, id } = await workOf();
    const before = await store.history.list({ limit: 50 });
    await store.save(id, job, 7);
    await store.faultCases.put({ id: 'f', cause: 'wet_air', symptoms: {} });
    await store.faultCases.remove('none');
    await store.bin('none');
    await store.erase(id);
    await store.runs.end('run', { sha256: 'cd'.repeat(32), bytes: 1 });
    expect(await store.history.list({ limit: 50 })).toEqual(before);
  });

  it('is one chain, however many write at once', async () => {
    const store = company.shop('main');
    await Promise.all(Array.from({ length: 12 }, () => store.create(job)));
    const numbers = (await store.history.list({ limit: 50 })).map(({ number }) => number);
    expect(numbers).toEqual([12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1]);
    expect((await company.audit()).problems).toEqual([]);
  });

  it('is refused to whoever would change it', async () => {
    await workOf();
    await meddle(async ({ kysely }) => {
      for (const work of [
        () => kysely.updateTable('history').set({ who: 'Bo' }).execute(),
        () => kysely.deleteFrom('history').where('number', '=', 2).execute(),
      ])
        await expect(work()).rejects.toThrow('only added to');
    });
    expect((await company.audit()).problems).toEqual([]);
  });

  it.each([
    [
      'a revision that was changed',
      'is not what the history says was saved',
      ({ kysely }: Database) =>
        kysely.updateTable('document_revision').set({ content: 'x' }).where('number', '=', 2).execute(),
    ],
    [
      'another name under a revision',
      'is not what the history says was saved',
      ({ kysely }: Database) =>
        kysely.updateTable('document_revision').set({ saved_by: 'Bo' }).where('number', '=', 2).execute(),
    ],
    [
      'a revision that was taken out',
      'gone; no history says why',
      ({ kysely }: Database) => kysely.deleteFrom('document_revision').where('number', '=', 1).execute(),
    ],
    [
      'another name under a paper',
      'is not what the history says',
      ({ kysely }: Database) => kysely.updateTable('printed').set({ released_by: 'Bo' }).execute(),
    ],
    [
      'another file of a run',
      'is not what the history says',
      ({ kysely }: Database) =>
        kysely
          .updateTable('run')
          .set({ sha256: 'cd'.repeat(32) })
          .execute(),
    ],
    [
      'a right that nobody gave',
      'account b of the company is not what the history says',
      ({ kysely }: Database) => kysely.updateTable('account').set({ administrator: 1 }).execute(),
    ],
    [
      'a password that nobody set',
      'The password of account b',
      ({ kysely }: Database) => kysely.updateTable('account').set({ password: 'scrypt$x' }).execute(),
    ],
    [
      'a machine that nobody let in',
      'machine n of the company is in no history',
      ({ kysely }: Database) =>
        kysely
          .insertInto('machine')
          .values({ id: 'n', shop: 'main', name: '', hash: 'h', made_at: '' })
          .execute(),
    ],
  ] as const)('shows %s', async (_, words, work) => {
    await workOf();
    await meddle(work);
    expect((await company.audit()).problems.join('\n')).toContain(words);
  });

  it.each([
    [
      'an entry that was changed',
      'entry 2 is not what was written',
      ({ kysely }: Database) =>
        kysely
          .updateTable('history')
          .set({ who: 'Bo' })
          .where('shop', '=', 'main')
          .where('number', '=', 2)
          .execute(),
    ],
    [
      'an entry that was taken out',
      'entry 2 is missing',
      ({ kysely }: Database) =>
        kysely.deleteFrom('history').where('shop', '=', 'main').where('number', '=', 2).execute(),
    ],
    [
      'an end that was taken off',
      'does not end where it was last written',
      ({ kysely }: Database) =>
        kysely.deleteFrom('history').where('shop', '=', 'main').where('number', '=', 7).execute(),
    ],
  ] as const)('shows %s', async (_, words, work) => {
    await workOf();
    await meddle(async (database) => {
      await unlock(database);
      await work(database);
    });
    expect((await company.audit()).problems.join('\n')).toContain(words);
  });

  it('shows one that was written anew as a whole to whoever kept its end', async () => {
    await workOf();
    const { histories } = await company.audit();
    expect((await company.audit(histories)).problems).toEqual([]);
    await meddle(async (database) => {
      await unlock(database);
      const { kysely } = database;
      const last = await kysely
        .selectFrom('history')
        .selectAll()
        .where('shop', '=', 'main')
        .where('number', '=', 7)
        .executeTakeFirstOrThrow();
      const { who_id, state_before, state_after, act, ...rest } = last;
      const hash = entryHash({
        ...rest,
        act: act as 'end',
        who: { id: who_id, name: 'Bo' },
        before: state_before,
        after: state_after,
      });
      await kysely
        .updateTable('history')
        .set({ who: 'Bo', hash })
        .where('shop', '=', 'main')
        .where('number', '=', 7)
        .execute();
      await kysely.updateTable('history_head').set({ hash }).where('shop', '=', 'main').execute();
    });
    expect((await company.audit()).problems).toEqual([]);
    expect((await company.audit(histories)).problems.join()).toContain('entry 7 is not the one');
    const [, main] = histories;
    const further = { ...main!, entries: 99 };
    expect((await company.audit([further])).problems.join()).toContain('found 99 entries, there are 7');
    const gone = { ...main!, shop: 'gone' };
    expect((await company.audit([gone])).problems.join()).toContain('the whole history is gone');
  });
});
