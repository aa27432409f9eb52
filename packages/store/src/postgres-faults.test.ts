import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Database } from './database/database.ts';
import { openPostgres } from './database/postgres-database.ts';
import { NOBODY } from './history/change.ts';
import { workOn } from './history/work.ts';
import { migrate } from './migration/migrate.ts';
import { MIGRATIONS } from './migration/migrations.ts';
import { openStore } from './open-store.ts';
import { sqlStore } from './sql-store.ts';
import type { Store } from './store.ts';
import { type FaultyWire, faultyWire } from './testing/faulty-wire.ts';
import { findPostgres, type PostgresServer, startPostgres } from './testing/postgres-server.ts';
import { countingSources } from './testing/sources.ts';

const desk = { shop: 'main', who: NOBODY, now: () => new Date() };

const first = { text: 'title: Penstock\n', title: 'Penstock', revision: 'aa' };
const second = { text: 'title: Penstock, wider\n', title: 'Penstock, wider', revision: null };
const third = { ...second, text: 'title: Penstock, wider still\n' };
const entry = {
  readings: { open_circuit: { text: '72 V', value: 72, note: '' } },
  ticks: ['power-1'],
  findings: [],
};
/** Short enough for a test that waits for it, long enough for a database that is only slow. */
const SHORT = { connect: 1000, answer: 1000, statement: 900, lock: 300, idle: 900 };

const found = findPostgres();
const title = 'missing' in found ? `PostgreSQL (left out: ${found.missing})` : 'PostgreSQL';
describe.skipIf('missing' in found)(`a store on a ${title} that fails`, () => {
  let server: PostgresServer;
  let wire: FaultyWire;
  let database: Database;
  let store: Store;
  let beside: pg.Client;

  beforeAll(() => {
    if ('binaries' in found) server = startPostgres(found.binaries);
  });
  afterAll(() => server.stop());
  beforeEach(async () => {
    const url = server.newDatabase();
    wire = await faultyWire(url);
    database = openPostgres(wire.url, SHORT);
    const sources = countingSources();
    await migrate(database, MIGRATIONS, sources.now);
    store = sqlStore(database, sources);
    beside = new pg.Client({ connectionString: url });
    await beside.connect();
  });
  afterEach(async () => {
    await beside.end();
    await store.close();
    await wire.close();
  });

  const breakAll = () =>
    beside.query(
      `select pg_terminate_backend(pid) from pg_stat_activity
       where datname = current_database() and pid <> pg_backend_pid()`,
    );

  it('goes on after its idle connections were broken', async () => {
    const job = await store.create(first);
    for (let times = 0; times < 3; times++) {
      await breakAll();
      expect(await store.get(job.id)).toEqual(job);
    }
  });

  it('does a transaction again whose connection was broken in the middle of it', async () => {
    let tries = 0;
    await workOn(database, desk).transact(async (transaction) => {
      await transaction
        .insertInto('fault_case')
        .values({ shop: 'main', id: 'a', cause: 'wet_air', symptoms: '{}', counted_at: '' })
        .execute();
      if (++tries === 1) await breakAll();
    });
    expect(tries).toBe(2);
    expect(await store.faultCases.list()).toHaveLength(1);
  });

  it('says that nothing was changed, and changes nothing, where the connection breaks each time', async () => {
    const work = workOn(database, desk).transact(async (transaction) => {
      await transaction
        .insertInto('fault_case')
        .values({ shop: 'main', id: 'a', cause: 'wet_air', symptoms: '{}', counted_at: '' })
        .execute();
      await breakAll();
      await transaction.selectFrom('fault_case').select('id').execute();
    });
    await expect(work).rejects.toMatchObject({
      code: 'STORE_UNAVAILABLE',
      message: expect.stringContaining('nothing was changed'),
    });
    expect(await store.faultCases.list()).toEqual([]);
  });

  describe.each(['request lost', 'answer lost'] as const)('with the commit’s %s', (fault) => {
    it('saves a job, its revisions and its copy once each', async () => {
      wire.loseCommits(fault);
      const { id } = await store.create(first);
      wire.loseCommits(fault);
      expect(await store.save(id, second, 1)).toMatchObject({ ok: true, job: { revision_number: 2 } });
      expect(await store.revisions(id)).toHaveLength(2);
      wire.loseCommits(fault);
      expect(await store.duplicate(id)).toMatchObject({ text: second.text });
      expect(await store.list()).toHaveLength(2);
    });

    it('moves a job into the bin and back', async () => {
      const { id } = await store.create(first);
      wire.loseCommits(fault);
      expect(await store.bin(id)).toBe(true);
      wire.loseCommits(fault);
      expect(await store.restore(id)).toMatchObject(first);
      await store.bin(id);
      wire.loseCommits(fault);
      expect(await store.erase(id)).toBe(true);
    });

    it('saves kit, readings, papers and faults once each', async () => {
      const { id } = await store.create(first);
      wire.loseCommits(fault);
      expect(await store.kit.save(first, 0)).toMatchObject({ ok: true, saved: { revision_number: 1 } });
      wire.loseCommits(fault);
      expect(await store.commissioning.save(id, entry, 0)).toMatchObject({ ok: true });
      wire.loseCommits(fault);
      const card = {
        paper: 'card.pdf',
        revision_number: 1,
        revision: 'aa',
        kit_revision: null,
        knowledge_id: null,
      };
      expect(await store.printed.add(id, card)).toBe(true);
      expect(await store.printed.list(id)).toHaveLength(1);
      wire.loseCommits(fault);
      await store.faultCases.put({ id: 'a', cause: 'wet_air', symptoms: {} });
      wire.loseCommits(fault);
      expect(await store.faultCases.remove('a')).toBe(true);
    });
  });

  it('says that it is in doubt where it cannot find out, and takes the same save again as the one it was', async () => {
    const { id } = await store.create(first);
    wire.loseCommits('answer lost', 'request lost');
    await expect(store.save(id, second, 1)).rejects.toMatchObject({
      code: 'STORE_IN_DOUBT',
      message: expect.not.stringContaining('nothing was changed'),
    });
    const again = await store.save(id, second, 1);
    expect(again).toMatchObject({ ok: true, job: { ...second, revision_number: 2 } });
    expect(await store.save(id, third, 1)).toMatchObject({ ok: false, code: 'JOB_CHANGED_MEANWHILE' });
    expect(await store.revisions(id)).toHaveLength(2);
  });

  it('gives a silent database up, and can be closed', async () => {
    const { id } = await store.create(first);
    wire.silence(true);
    const asked = [store.get(id), store.save(id, second, 1), store.list()];
    for (const outcome of await Promise.allSettled(asked)) {
      expect(outcome).toMatchObject({ status: 'rejected', reason: { code: 'STORE_UNAVAILABLE' } });
    }
    const asking = expect(store.get(id)).rejects.toMatchObject({ code: 'STORE_UNAVAILABLE' });
    await store.close();
    wire.cut();
    await asking;
  });

  it('does not wait for a lock for ever', async () => {
    const { id } = await store.create(first);
    await beside.query('begin');
    await beside.query('select 1 from document for update');
    await expect(store.save(id, second, 1)).rejects.toMatchObject({ code: 'STORE_UNAVAILABLE' });
    await beside.query('rollback');
    expect(await store.save(id, second, 1)).toMatchObject({ ok: true });
  });

  it.each([
    ['off', 'on'],
    ['local', 'on'],
    ['remote_apply', 'remote_apply'],
  ])('commits durably where the role is set to %s', async (set, used) => {
    await beside.query(`alter role furrow set synchronous_commit = ${set}`);
    try {
      const fresh = openPostgres(wire.url, SHORT);
      const { rows } = await fresh.kysely
        .selectFrom('pg_settings' as never)
        .select(['name', 'setting'] as never)
        .where('name' as never, 'in', ['synchronous_commit', 'lock_timeout', 'statement_timeout'] as never)
        .orderBy('name' as never)
        .execute()
        .then((all) => ({ rows: all as unknown[] }));
      await fresh.kysely.destroy();
      expect(rows).toEqual([
        { name: 'lock_timeout', setting: String(SHORT.lock) },
        { name: 'statement_timeout', setting: String(SHORT.statement) },
        { name: 'synchronous_commit', setting: used },
      ]);
    } finally {
      await beside.query('alter role furrow reset synchronous_commit');
    }
  });

  it('refuses, in words, a database that does not keep text as UTF8', async () => {
    await expect(openStore({ url: server.newDatabase('LATIN1') }, countingSources())).rejects.toMatchObject({
      code: 'STORE_UNAVAILABLE',
      message: expect.stringMatching(/LATIN1.*UTF8.*Nothing was changed/),
    });
  });
});
