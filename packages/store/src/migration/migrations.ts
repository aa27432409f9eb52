import { type Kysely, sql } from 'kysely';
import type { Database } from '../database/database.ts';
import { createHistory } from './create-history.ts';

/** One step of the database's history, written once for both dialects. */
export interface Migration {
  readonly name: string;
  /** What it changes, in a line. */
  readonly why: string;
  // A migration works on the tables of its own day, which the types of today do not know.
  readonly up: (database: Kysely<unknown>, kind: Database['kind']) => Promise<void>;
}

/** All steps, oldest first. A released one is never edited, renamed or moved: add another. */
export const MIGRATIONS: readonly Migration[] = [
  {
    name: 'jobs-and-revisions',
    why: 'Jobs are kept with every revision that was ever saved.',
    up: async (database) => {
      await database.schema
        .createTable('job')
        .addColumn('id', 'text', (column) => column.primaryKey())
        .addColumn('created_at', 'text', (column) => column.notNull())
        .addColumn('deleted_at', 'text')
        .addColumn('latest', 'integer', (column) => column.notNull())
        .execute();
      await database.schema
        .createTable('job_revision')
        .addColumn('job_id', 'text', (column) => column.notNull().references('job.id'))
        .addColumn('number', 'integer', (column) => column.notNull())
        .addColumn('text', 'text', (column) => column.notNull())
        .addColumn('title', 'text', (column) => column.notNull())
        .addColumn('revision', 'text')
        .addColumn('saved_at', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('job_revision_key', ['job_id', 'number'])
        .execute();
    },
  },
  {
    name: 'kit-commissioning-faults',
    why: 'The kit, what is read at the rig for a job and the faults found are kept too.',
    up: async (database) => {
      await database.schema
        .createTable('kit_revision')
        .addColumn('number', 'integer', (column) => column.primaryKey())
        .addColumn('text', 'text', (column) => column.notNull())
        .addColumn('title', 'text', (column) => column.notNull())
        .addColumn('revision', 'text')
        .addColumn('saved_at', 'text', (column) => column.notNull())
        .execute();
      await database.schema
        .createTable('commissioning')
        .addColumn('job_id', 'text', (column) => column.notNull().references('job.id'))
        .addColumn('number', 'integer', (column) => column.notNull())
        .addColumn('content', 'text', (column) => column.notNull())
        .addColumn('saved_at', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('commissioning_key', ['job_id', 'number'])
        .execute();
      await database.schema
        .createTable('fault_case')
        .addColumn('id', 'text', (column) => column.primaryKey())
        .addColumn('cause', 'text', (column) => column.notNull())
        .addColumn('symptoms', 'text', (column) => column.notNull())
        .addColumn('counted_at', 'text', (column) => column.notNull())
        .execute();
    },
  },
  {
    name: 'printed-papers',
    why: 'Which papers were handed out is kept, so that those of an earlier revision are known to be superseded.',
    up: async (database) => {
      await database.schema
        .createTable('printed')
        .addColumn('id', 'text', (column) => column.primaryKey())
        .addColumn('job_id', 'text', (column) => column.notNull().references('job.id'))
        .addColumn('paper', 'text', (column) => column.notNull())
        .addColumn('revision_number', 'integer', (column) => column.notNull())
        .addColumn('revision', 'text', (column) => column.notNull())
        .addColumn('kit_revision', 'text')
        .addColumn('printed_at', 'text', (column) => column.notNull())
        .execute();
    },
  },
  {
    name: 'documents-of-shops',
    why: 'Jobs, kits, readings and what is to come are saved one way, and everything belongs to a shop.',
    up: async (database) => {
      for (const table of ['fault_case', 'printed']) {
        await database.schema.alterTable(table).renameTo(`${table}_before`).execute();
      }
      await createDocuments(database);
      await createFaultsAndPapers(database);
      for (const copy of COPIES) await sql.raw(copy).execute(database);
      for (const table of [
        'printed_before',
        'fault_case_before',
        'commissioning',
        'kit_revision',
        'job_revision',
        'job',
      ]) {
        await database.schema.dropTable(table).execute();
      }
    },
  },
  {
    name: 'printed-knowledge',
    why: 'Papers say which knowledge they were planned with, so that it is known where the shop has learned more since.',
    up: async (database) => {
      await database.schema.alterTable('printed').addColumn('knowledge_id', 'text').execute();
    },
  },
  {
    name: 'runs',
    why: 'Runs are kept: which file of which job, and what each version of the program found in it.',
    up: async (database) => {
      await database.schema
        .createTable('run')
        .addColumn('shop', 'text', (column) => column.notNull())
        .addColumn('id', 'text', (column) => column.notNull())
        .addColumn('job_id', 'text', (column) => column.notNull())
        .addColumn('name', 'text', (column) => column.notNull())
        .addColumn('revision_number', 'integer', (column) => column.notNull())
        .addColumn('revision', 'text')
        .addColumn('kit_number', 'integer')
        .addColumn('knowledge_number', 'integer')
        .addColumn('logger', 'text')
        .addColumn('rehearsal', 'integer', (column) => column.notNull())
        .addColumn('source', 'text')
        .addColumn('sha256', 'text')
        // more than 2 GB are no integer in PostgreSQL, and a larger one would come back as text
        .addColumn('bytes', 'double precision')
        .addColumn('begun_at', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('run_key', ['shop', 'id'])
        .execute();
      await database.schema.createIndex('run_of_job').on('run').columns(['shop', 'job_id']).execute();
      await database.schema
        .createTable('run_review')
        .addColumn('shop', 'text', (column) => column.notNull())
        .addColumn('run_id', 'text', (column) => column.notNull())
        .addColumn('program_version', 'text', (column) => column.notNull())
        .addColumn('tries', 'integer', (column) => column.notNull())
        .addColumn('reviewed_at', 'text')
        .addColumn('report', 'text')
        .addColumn('summary', 'text')
        .addColumn('trouble', 'text')
        .addPrimaryKeyConstraint('run_review_key', ['shop', 'run_id', 'program_version'])
        .addForeignKeyConstraint('run_review_of', ['shop', 'run_id'], 'run', ['shop', 'id'])
        .execute();
    },
  },
  {
    name: 'people-and-shops',
    why: 'People sign in, belong to shops and may do what their role allows; machines bring readings by tokens.',
    up: createPeople,
  },
  {
    name: 'review-claims',
    why: 'Of several programs on one database, one reviews a run.',
    up: async (database) => {
      await database.schema.alterTable('run_review').addColumn('claim', 'text').execute();
      await database.schema.alterTable('run_review').addColumn('claimed_until', 'text').execute();
    },
  },
  {
    name: 'history',
    why: 'Who changed what, when and from what is kept, each entry held by the next.',
    up: createHistory,
  },
  {
    name: 'identities',
    why: 'People sign in by a provider, which knows each by an identifier of its own.',
    up: async (database) => {
      await database.schema
        .createTable('identity')
        .addColumn('issuer', 'text', (column) => column.notNull())
        .addColumn('subject', 'text', (column) => column.notNull())
        .addColumn('account_id', 'text', (column) => column.notNull().references('account.id'))
        .addPrimaryKeyConstraint('identity_key', ['issuer', 'subject'])
        .addUniqueConstraint('identity_of_account', ['account_id', 'issuer'])
        .execute();
    },
  },
  {
    name: 'no-broker-passwords',
    why: 'The address of a broker keeps no password; older versions took one.',
    up: takeOutPasswords,
  },
];

/** Takes the password out of every address of a source; whoever begins such a run names a variable instead. */
async function takeOutPasswords(database: Kysely<unknown>): Promise<void> {
  const runs = database as Kysely<{ run: { shop: string; id: string; source: string | null } }>;
  const rows = await runs
    .selectFrom('run')
    .select(['shop', 'id', 'source'])
    .where('source', 'like', '%@%')
    .execute();
  for (const { shop, id, source } of rows) {
    const without = withoutPassword(source ?? '');
    if (without === undefined) continue;
    await runs
      .updateTable('run')
      .set({ source: without })
      .where('shop', '=', shop)
      .where('id', '=', id)
      .execute();
  }
}

/** A source without the password in its address; undefined where there is none. */
function withoutPassword(source: string): string | undefined {
  const read: unknown = JSON.parse(source);
  if (typeof read !== 'object' || read === null || !('url' in read) || typeof read.url !== 'string')
    return undefined;
  // by hand: an address that was taken once need not be one that is taken today
  const url = read.url.replace(/^([^/]*\/\/[^:@/]*):[^/]*@/u, '$1@');
  return url === read.url ? undefined : JSON.stringify({ ...read, url });
}

async function createPeople(database: Kysely<unknown>): Promise<void> {
  await database.schema
    .createTable('shop')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('made_at', 'text', (column) => column.notNull())
    .execute();
  await database.schema
    .createTable('account')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('name_key', 'text', (column) => column.notNull().unique())
    .addColumn('administrator', 'integer', (column) => column.notNull())
    .addColumn('password', 'text')
    .addColumn('shut', 'integer', (column) => column.notNull())
    .addColumn('made_at', 'text', (column) => column.notNull())
    .execute();
  await database.schema
    .createTable('member')
    .addColumn('account_id', 'text', (column) => column.notNull().references('account.id'))
    .addColumn('shop', 'text', (column) => column.notNull().references('shop.id'))
    .addColumn('role', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('member_key', ['account_id', 'shop'])
    .execute();
  await database.schema
    .createTable('session')
    .addColumn('hash', 'text', (column) => column.primaryKey())
    .addColumn('account_id', 'text', (column) => column.notNull().references('account.id'))
    .addColumn('shop', 'text', (column) => column.references('shop.id'))
    .addColumn('made_at', 'text', (column) => column.notNull())
    .addColumn('ends_at', 'text', (column) => column.notNull())
    .addColumn('exchanged', 'integer', (column) => column.notNull())
    .execute();
  await database.schema
    .createTable('one_time_link')
    .addColumn('hash', 'text', (column) => column.primaryKey())
    .addColumn('account_id', 'text', (column) => column.notNull().references('account.id'))
    .addColumn('ends_at', 'text', (column) => column.notNull())
    .execute();
  await database.schema
    .createTable('machine')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('shop', 'text', (column) => column.notNull().references('shop.id'))
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('hash', 'text', (column) => column.notNull().unique())
    .addColumn('made_at', 'text', (column) => column.notNull())
    .execute();
  await database.schema
    .createTable('sign_in_failure')
    .addColumn('key', 'text', (column) => column.primaryKey())
    .addColumn('count', 'integer', (column) => column.notNull())
    .addColumn('at', 'text', (column) => column.notNull())
    .execute();
  // the shop that there was before is the first of them, under a name that its people can change
  await sql
    .raw(`insert into shop (id, name, made_at) values ('main', 'The shop', '1970-01-01T00:00:00.000Z')`)
    .execute(database);
}

async function createDocuments(database: Kysely<unknown>): Promise<void> {
  await database.schema
    .createTable('document')
    .addColumn('shop', 'text', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('created_at', 'text', (column) => column.notNull())
    .addColumn('deleted_at', 'text')
    .addColumn('latest', 'integer', (column) => column.notNull())
    .addPrimaryKeyConstraint('document_key', ['shop', 'kind', 'id'])
    .execute();
  await database.schema
    .createTable('document_revision')
    .addColumn('shop', 'text', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('content', 'text', (column) => column.notNull())
    .addColumn('title', 'text', (column) => column.notNull())
    .addColumn('revision', 'text')
    .addColumn('saved_at', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('document_revision_key', ['shop', 'kind', 'id', 'number'])
    .addForeignKeyConstraint('document_revision_of', ['shop', 'kind', 'id'], 'document', [
      'shop',
      'kind',
      'id',
    ])
    .execute();
}

async function createFaultsAndPapers(database: Kysely<unknown>): Promise<void> {
  await database.schema
    .createTable('fault_case')
    .addColumn('shop', 'text', (column) => column.notNull())
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('cause', 'text', (column) => column.notNull())
    .addColumn('symptoms', 'text', (column) => column.notNull())
    .addColumn('counted_at', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('fault_case_key', ['shop', 'id'])
    .execute();
  await database.schema
    .createTable('printed')
    .addColumn('shop', 'text', (column) => column.notNull())
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('job_id', 'text', (column) => column.notNull())
    .addColumn('paper', 'text', (column) => column.notNull())
    .addColumn('revision_number', 'integer', (column) => column.notNull())
    .addColumn('revision', 'text', (column) => column.notNull())
    .addColumn('kit_revision', 'text')
    .addColumn('printed_at', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('printed_key', ['shop', 'id'])
    .execute();
}

/** What was kept before belongs to the one shop there was. */
const COPIES = [
  `insert into document (shop, kind, id, created_at, deleted_at, latest)
   select 'main', 'job', id, created_at, deleted_at, latest from job`,
  `insert into document_revision (shop, kind, id, number, content, title, revision, saved_at)
   select 'main', 'job', job_id, number, text, title, revision, saved_at from job_revision`,
  `insert into document (shop, kind, id, created_at, latest)
   select 'main', 'kit', 'kit', min(saved_at), max(number) from kit_revision having count(*) > 0`,
  `insert into document_revision (shop, kind, id, number, content, title, revision, saved_at)
   select 'main', 'kit', 'kit', number, text, title, revision, saved_at from kit_revision`,
  `insert into document (shop, kind, id, created_at, latest)
   select 'main', 'rig', job_id, min(saved_at), max(number) from commissioning group by job_id`,
  `insert into document_revision (shop, kind, id, number, content, title, saved_at)
   select 'main', 'rig', job_id, number, content, '', saved_at from commissioning`,
  `insert into fault_case (shop, id, cause, symptoms, counted_at)
   select 'main', id, cause, symptoms, counted_at from fault_case_before`,
  `insert into printed (shop, id, job_id, paper, revision_number, revision, kit_revision, printed_at)
   select 'main', id, job_id, paper, revision_number, revision, kit_revision, printed_at from printed_before`,
];
