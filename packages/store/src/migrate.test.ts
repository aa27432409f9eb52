import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, rmdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { sql } from 'kysely';
import Libsql from 'libsql';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { auditCompany } from './audit/audit.ts';
import type { Database } from './database/database.ts';
import { openPostgres } from './database/postgres-database.ts';
import { openSqlite } from './database/sqlite-database.ts';
import { migrate } from './migration/migrate.ts';
import { MIGRATIONS, type Migration } from './migration/migrations.ts';
import type { StorePlace } from './open-store.ts';
import { sqlStore } from './sql-store.ts';
import { testedKinds } from './testing/place.ts';
import { countingSources } from './testing/sources.ts';

const content = { text: 'title: a\n', title: 'a', revision: null };

const addsTable: Migration = {
  name: 'adds-a-table',
  why: 'Stands for a step of a later version.',
  up: async (database) => {
    await database.schema.createTable('later').addColumn('id', 'text').execute();
  },
};

const breaksHalfWay: Migration = {
  name: 'breaks-half-way',
  why: 'Stands for a step that meets something unforeseen.',
  up: async (database, kind) => {
    await addsTable.up(database, kind);
    throw new Error('unforeseen');
  },
};

/** Starts a migration in a program of its own, and kills that once everything of the step is changed. */
function killedInStep(place: StorePlace): Promise<void> {
  const program = fileURLToPath(new URL('./testing/migrate-and-wait.ts', import.meta.url));
  const child = spawn(
    process.execPath,
    ['--conditions=furrow-source', '--import', 'tsx', program, JSON.stringify(place)],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  createInterface({ input: child.stdout }).once('line', () => child.kill('SIGKILL'));
  return new Promise((resolve, reject) => {
    child.once('close', (_code, signal) =>
      signal === 'SIGKILL' ? resolve() : reject(new Error('the migration ended by itself')),
    );
  });
}

for (const kind of testedKinds()) {
  const title = kind.missing === undefined ? kind.name : `${kind.name} (left out: ${kind.missing})`;
  describe.skipIf(kind.missing !== undefined)(`migrate on ${title}`, () => {
    const { now, newId } = countingSources();
    let place: StorePlace;
    let database: Database;
    const open = (): Database => ('url' in place ? openPostgres(place.url) : openSqlite(place.folder));
    const history = () =>
      database.kysely.selectFrom('furrow_migration').select(['number', 'name']).orderBy('number').execute();
    const write = (row: string) => sql.raw(row).execute(database.kysely);
    const backups = () =>
      'folder' in place ? readdirSync(place.folder).filter((name) => name.startsWith('before-')) : [];

    beforeAll(() => kind.start());
    afterAll(() => kind.stop());
    beforeEach(() => {
      place = kind.newPlace();
      database = open();
    });
    afterEach(() => database.kysely.destroy());

    it('writes its history, runs nothing twice and makes no backup of a new database', async () => {
      await migrate(database, MIGRATIONS, now);
      await migrate(database, MIGRATIONS, now);
      expect(await history()).toEqual(MIGRATIONS.map(({ name }, index) => ({ number: index + 1, name })));
      expect(backups()).toEqual([]);
    });

    it('brings an older database up to date and keeps its jobs', async () => {
      await migrate(database, MIGRATIONS, now);
      const store = sqlStore(database, { now, newId });
      const job = await store.create(content);
      await migrate(database, [...MIGRATIONS, addsTable], now);
      expect(await history()).toHaveLength(MIGRATIONS.length + 1);
      expect(await store.get(job.id)).toEqual(job);
    });

    it('brings a database of the first release up to date: its jobs stay, a kit and readings can be kept', async () => {
      await migrate(database, MIGRATIONS.slice(0, 1), now);
      await write("insert into job values ('j1', '2026-01-01T00:00:00.000Z', null, 1)");
      await write(
        "insert into job_revision values ('j1', 1, 'title: a', 'a', null, '2026-01-01T00:00:00.000Z')",
      );
      await migrate(database, MIGRATIONS, now);
      const store = sqlStore(database, { now, newId });
      expect(await store.get('j1')).toMatchObject({ text: 'title: a', revision_number: 1 });
      expect(await store.kit.get()).toBeUndefined();
      expect(await store.kit.save(content, 0)).toMatchObject({ ok: true });
      const entry = { readings: {}, ticks: ['power-1'], findings: [] };
      expect(await store.commissioning.save('j1', entry, 0)).toMatchObject({ ok: true });
      const printed = {
        paper: 'quote.pdf',
        revision_number: 1,
        revision: 'aa',
        kit_revision: null,
        knowledge_id: null,
      };
      expect(await store.printed.add('j1', printed)).toBe(true);
    });

    it('gives everything of a database without shops to the one shop there was', async () => {
      const at = (minute: number) => `2026-01-01T00:0${minute}:00.000Z`;
      const readings = { readings: {}, ticks: { 'power-1': at(5) }, findings: [] };
      await migrate(database, MIGRATIONS.slice(0, 3), now);
      for (const row of [
        `insert into job values ('j1', '${at(1)}', null, 2)`,
        `insert into job values ('j2', '${at(2)}', '${at(4)}', 1)`,
        `insert into job_revision values ('j1', 1, 'title: a', 'a', 'aa', '${at(1)}')`,
        `insert into job_revision values ('j1', 2, 'title: "Шов"', 'Шов', null, '${at(3)}')`,
        `insert into job_revision values ('j2', 1, 'title: b', 'b', 'bb', '${at(2)}')`,
        `insert into kit_revision values (1, 'title: k', 'k', 'kk', '${at(1)}')`,
        `insert into kit_revision values (2, 'title: l', 'l', null, '${at(2)}')`,
        `insert into commissioning values ('j1', 1, '${JSON.stringify({ ...readings, ticks: {} })}', '${at(4)}')`,
        `insert into commissioning values ('j1', 2, '${JSON.stringify(readings)}', '${at(5)}')`,
        `insert into fault_case values ('f1', 'wet_air', '{"hot_joint":"yes"}', '${at(6)}')`,
        `insert into printed values ('p1', 'j1', 'quote.pdf', 1, 'aa', 'kk', '${at(7)}')`,
      ]) {
        await write(row);
      }
      await migrate(database, MIGRATIONS, now);
      const store = sqlStore(database, { now, newId });
      expect(await store.list()).toEqual([
        {
          id: 'j1',
          title: 'Шов',
          revision: null,
          revision_number: 2,
          saved_at: at(3),
          saved_by: null,
          created_at: at(1),
        },
      ]);
      expect(await store.revision('j1', 1)).toMatchObject({
        text: 'title: a',
        revision: 'aa',
        saved_at: at(1),
        saved_by: null,
      });
      expect(await store.listBin()).toMatchObject([{ id: 'j2', deleted_at: at(4) }]);
      expect(await store.restore('j2')).toMatchObject({ text: 'title: b', created_at: at(2) });
      expect((await store.kit.revisions()).map((each) => [each.revision_number, each.revision])).toEqual([
        [2, null],
        [1, 'kk'],
      ]);
      expect(await store.commissioning.get('j1')).toEqual({
        job_id: 'j1',
        revision_number: 2,
        saved_at: at(5),
        ...readings,
      });
      expect(await store.faultCases.list()).toEqual([
        { id: 'f1', cause: 'wet_air', symptoms: { hot_joint: 'yes' } },
      ]);
      expect(await store.printed.list('j1')).toEqual([
        {
          paper: 'quote.pdf',
          revision_number: 1,
          revision: 'aa',
          kit_revision: 'kk',
          knowledge_id: null,
          printed_at: at(7),
          released_by: null,
        },
      ]);
      expect(await store.save('j1', content, 2)).toMatchObject({ ok: true, job: { revision_number: 3 } });
      expect(await auditCompany(database, [])).toMatchObject({ held: 11, problems: [] });
      const elsewhere = sqlStore(database, { now, newId }, 'another shop');
      expect([await elsewhere.list(), await elsewhere.kit.get(), await elsewhere.faultCases.list()]).toEqual([
        [],
        undefined,
        [],
      ]);
    });

    it('takes the passwords of brokers out of live runs that an older version began, and nothing else', async () => {
      await migrate(
        database,
        MIGRATIONS.slice(
          0,
          MIGRATIONS.findIndex(({ name }) => name === 'no-broker-passwords'),
        ),
        now,
      );
      const sources = {
        secret: '{"kind":"mqtt","url":"mqtts://rig4:open:se@me@broker.example:8883","topic":"bay4","qos":1}',
        named:
          '{"kind":"mqtt","url":"mqtt://rig4@broker.example","topic":"a:b@c","password_env":"FURROW_BROKER_A"}',
        other: '{"kind":"modbus","host":"10.0.0.7","port":502,"name":"x:y@z"}',
      };
      for (const [id, source] of Object.entries(sources))
        await sql`insert into run (shop, id, job_id, name, revision_number, revision, source, begun_at, rehearsal)
          values ('main', ${id}, 'j1', ${id}, 1, 'aa', ${source}, '2026-01-01T00:00:00.000Z', 0)`.execute(
          database.kysely,
        );
      await migrate(database, MIGRATIONS, now);
      const kept = await database.kysely.selectFrom('run').select(['id', 'source']).orderBy('id').execute();
      expect(Object.fromEntries(kept.map(({ id, source }) => [id, source]))).toEqual({
        ...sources,
        secret: '{"kind":"mqtt","url":"mqtts://rig4@broker.example:8883","topic":"bay4","qos":1}',
      });
    });

    it('refuses a database of a newer version, and changes nothing', async () => {
      await migrate(database, [...MIGRATIONS, addsTable], now);
      await expect(migrate(database, MIGRATIONS, now)).rejects.toMatchObject({
        code: 'STORE_HISTORY',
        message: expect.stringContaining('adds-a-table'),
      });
      expect(await history()).toHaveLength(MIGRATIONS.length + 1);
    });

    it('refuses a database whose history took another way', async () => {
      await migrate(database, [addsTable], now);
      await expect(migrate(database, MIGRATIONS, now)).rejects.toMatchObject({ code: 'STORE_HISTORY' });
      expect(await history()).toEqual([{ number: 1, name: addsTable.name }]);
    });

    it('leaves no trace of a step that breaks half-way', async () => {
      await migrate(database, MIGRATIONS, now);
      await expect(migrate(database, [...MIGRATIONS, breaksHalfWay], now)).rejects.toThrow('unforeseen');
      expect(await history()).toHaveLength(MIGRATIONS.length);
      await migrate(database, [...MIGRATIONS, addsTable], now);
      expect(await history()).toHaveLength(MIGRATIONS.length + 1);
    });

    it('leaves no trace of a program that is killed in the middle of a step, and takes that step afterwards', async () => {
      await migrate(database, MIGRATIONS, now);
      const job = await sqlStore(database, { now, newId }).create(content);
      await killedInStep(place);
      const store = sqlStore(database, { now, newId });
      await expect.poll(() => store.get(job.id)).toEqual(job);
      expect(await history()).toHaveLength(MIGRATIONS.length);
      const whole = backups().map((name) => statSync(join('folder' in place ? place.folder : '', name)).size);
      expect(whole.every((size) => size > 0)).toBe(true);
      await migrate(database, [...MIGRATIONS, addsTable], now);
      expect(await history()).toHaveLength(MIGRATIONS.length + 1);
      expect(await store.get(job.id)).toEqual(job);
    });

    it('serves two programs that start at once on a new database', async () => {
      const other = open();
      await Promise.all([migrate(database, MIGRATIONS, now), migrate(other, MIGRATIONS, now)]);
      await other.kysely.destroy();
      expect(await history()).toHaveLength(MIGRATIONS.length);
    });

    if (kind.name !== 'sqlite') return; // What follows is about the file.

    it('takes nothing for a backup that is not whole', async () => {
      if (!('folder' in place)) throw new Error('not a folder');
      await migrate(database, MIGRATIONS, now);
      // What a kill in the middle of a backup leaves, and what keeps the next one from being made.
      const unfinished = join(place.folder, 'backup-unfinished.sqlite');
      mkdirSync(unfinished);
      await expect(migrate(database, [...MIGRATIONS, addsTable], now)).rejects.toThrow();
      expect([backups(), await history()]).toEqual([
        [],
        expect.objectContaining({ length: MIGRATIONS.length }),
      ]);
      rmdirSync(unfinished);
      writeFileSync(unfinished, '');
      await migrate(database, [...MIGRATIONS, addsTable], now);
      expect(backups()).toHaveLength(1);
      expect(existsSync(unfinished)).toBe(false);
      expect(statSync(join(place.folder, backups()[0] ?? '')).mode & 0o777).toBe(0o600);
    });

    it('backs a database up before changing it', async () => {
      await migrate(database, MIGRATIONS, now);
      const job = await sqlStore(database, { now, newId }).create(content);
      await migrate(database, [...MIGRATIONS, addsTable], now);
      const step = `before-step-${MIGRATIONS.length + 1}.sqlite`;
      expect(backups()).toEqual([step]);
      if (!('folder' in place)) throw new Error('not a folder');
      const copy = new Libsql(join(place.folder, step), { readonly: true });
      expect(copy.prepare('select id, content from document_revision').raw().all()).toEqual([
        [job.id, job.text],
      ]);
      expect(copy.prepare('select name from furrow_migration').raw().all()).toEqual(
        MIGRATIONS.map(({ name }) => [name]),
      );
      copy.close();
    });
  });
}

describe('MIGRATIONS', () => {
  it('have names of their own', () => {
    expect(new Set(MIGRATIONS.map(({ name }) => name)).size).toBe(MIGRATIONS.length);
  });
});
