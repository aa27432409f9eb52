import type { Kysely } from 'kysely';

/** One step of the database's history, written once for both dialects. */
export interface Migration {
  readonly name: string;
  /** What it changes, in a line. */
  readonly why: string;
  // A migration works on the tables of its own day, which the types of today do not know.
  readonly up: (database: Kysely<unknown>) => Promise<void>;
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
];
