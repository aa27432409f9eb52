import type { Kysely } from 'kysely';
import type { RunReviewRow, RunRow, Tables } from '../database/tables.ts';
import { documentTable, type Turn } from '../document/document-table.ts';
import type { Work } from '../history/work.ts';
import type { ListedRun, RunStore, StoredReview, StoredRun } from './run-store.ts';

/** Tries after which a review that ends the program each time is given up [-]. */
const TRIES_MOST = 3;
/** Time for which a review is claimed; whoever is at it claims it on before it is over [ms]. */
const CLAIM_TIME = 60_000;

/** The runs of the jobs, in their tables. */
export function sqlRunStore(work: Work, now: () => Date): RunStore {
  const { kysely, run, transact } = work;
  const { shop } = work.desk;
  const jobs = documentTable(work, 'job');
  const find = async (on: Kysely<Tables>, id: string): Promise<StoredRun | undefined> => {
    const row = await on
      .selectFrom('run')
      .selectAll()
      .where('shop', '=', shop)
      .where('id', '=', id)
      .executeTakeFirst();
    return row && runOf(row);
  };
  const reviewsOf = (on: Kysely<Tables>, ids: readonly string[]) =>
    on
      .selectFrom('run_review')
      .where('shop', '=', shop)
      .where('run_id', 'in', [...ids])
      .where('reviewed_at', 'is not', null)
      .orderBy('reviewed_at', 'desc')
      .orderBy('program_version', 'desc');
  const nextToReview = (on: Kysely<Tables>, version: string, moment: Date) =>
    on
      .selectFrom('run')
      .leftJoin('run_review', (join) =>
        join
          .onRef('run_review.shop', '=', 'run.shop')
          .onRef('run_review.run_id', '=', 'run.id')
          .on('run_review.program_version', '=', version),
      )
      .where('run.shop', '=', shop)
      .where('run.sha256', 'is not', null)
      .where((where) =>
        where.or([
          where('run_review.run_id', 'is', null),
          where.and([
            where('run_review.reviewed_at', 'is', null),
            where('run_review.tries', '<', TRIES_MOST),
            where.or([
              where('run_review.claimed_until', 'is', null),
              where('run_review.claimed_until', '<=', moment.toISOString()),
            ]),
          ]),
        ]),
      )
      .selectAll('run')
      .orderBy((order) => order.fn.coalesce('run_review.tries', order.lit(0)))
      .orderBy('run.begun_at', 'desc')
      .executeTakeFirst();
  const areHeld = async (on: Kysely<Tables>, version: string): Promise<boolean> =>
    (await on
      .selectFrom('run_review')
      .select('run_id')
      .where('shop', '=', shop)
      .where('program_version', '=', version)
      .where('reviewed_at', 'is', null)
      .where('tries', '<', TRIES_MOST)
      .executeTakeFirst()) !== undefined;
  return {
    add: (jobId, given) =>
      transact(async (transaction, note) => {
        const revision = await jobs.revision(transaction, jobId, given.revision_number);
        if (revision === undefined) return undefined;
        const { original, rehearsal, ...rest } = given;
        const { numInsertedOrUpdatedRows } = await transaction
          .insertInto('run')
          .values({
            shop,
            job_id: jobId,
            ...rest,
            revision: revision.revision,
            rehearsal: rehearsal ? 1 : 0,
            sha256: original?.sha256 ?? null,
            bytes: original?.bytes ?? null,
            begun_at: now().toISOString(),
          })
          .onConflict((conflict) => conflict.doNothing())
          .executeTakeFirst();
        if (numInsertedOrUpdatedRows === 1n)
          note({ act: 'add', kind: 'run', thing: given.id, after: jobId, content: original?.sha256 ?? null });
        return find(transaction, given.id);
      }),
    end: (id, { sha256, bytes }) =>
      transact(async (transaction, note) => {
        const { numUpdatedRows } = await transaction
          .updateTable('run')
          .set({ sha256, bytes })
          .where('shop', '=', shop)
          .where('id', '=', id)
          .where('sha256', 'is', null)
          .executeTakeFirst();
        if (numUpdatedRows > 0n) note({ act: 'end', kind: 'run', thing: id, content: sha256 });
        const ended = await find(transaction, id);
        return ended?.original?.sha256 === sha256 ? ended : undefined;
      }),
    list: (jobId) =>
      run(async () => {
        if ((await jobs.find(kysely, jobId)) === undefined) return undefined;
        const rows = await kysely
          .selectFrom('run')
          .selectAll()
          .where('shop', '=', shop)
          .where('job_id', '=', jobId)
          .orderBy('begun_at', 'desc')
          .orderBy('id')
          .execute();
        if (rows.length === 0) return [];
        const reviews = await reviewsOf(
          kysely,
          rows.map(({ id }) => id),
        )
          .select(['run_id', 'program_version', 'reviewed_at', 'summary', 'trouble'])
          .execute();
        return rows.map((row): ListedRun => {
          const own = reviews.filter(({ run_id }) => run_id === row.id);
          const newest = own.find(({ summary }) => summary !== null) ?? own[0];
          if (newest === undefined) return { ...runOf(row), review: null };
          const { run_id: _, reviewed_at, ...review } = newest;
          return { ...runOf(row), review: { ...review, reviewed_at: reviewed_at ?? '' } };
        });
      }),
    summaries: () =>
      run(async () => {
        const rows = await kysely
          .selectFrom('run')
          .leftJoin('run_review', (join) =>
            join
              .onRef('run_review.shop', '=', 'run.shop')
              .onRef('run_review.run_id', '=', 'run.id')
              .on('run_review.reviewed_at', 'is not', null),
          )
          .select(['run.id', 'run.job_id', 'run_review.summary'])
          .where('run.shop', '=', shop)
          .where('run.rehearsal', '=', 0)
          .where('run.sha256', 'is not', null)
          .orderBy('run_review.reviewed_at')
          .execute();
        const newest = new Map<string, { job_id: string; summary: string | null }>();
        for (const { id, job_id, summary } of rows)
          newest.set(id, { job_id, summary: summary ?? newest.get(id)?.summary ?? null });
        return [...newest.values()];
      }),
    get: (id) => run(() => find(kysely, id)),
    live: () =>
      run(async () =>
        (
          await kysely
            .selectFrom('run')
            .selectAll()
            .where('shop', '=', shop)
            .where('sha256', 'is', null)
            .orderBy('begun_at')
            .execute()
        ).map(runOf),
      ),
    reviews: (id) =>
      run(async () => (await reviewsOf(kysely, [id]).selectAll().execute()).map((row) => reviewOf(row))),
    claimReview: (version, claim) =>
      transact(async (transaction) => {
        const claimed = await transaction
          .selectFrom('run')
          .innerJoin('run_review', (join) =>
            join.onRef('run_review.shop', '=', 'run.shop').onRef('run_review.run_id', '=', 'run.id'),
          )
          .selectAll('run')
          .where('run.shop', '=', shop)
          .where('run_review.claim', '=', claim)
          .executeTakeFirst();
        if (claimed !== undefined) return { run: runOf(claimed), held: false };
        for (;;) {
          const moment = now();
          const row = await nextToReview(transaction, version, moment);
          if (row === undefined) return { run: undefined, held: await areHeld(transaction, version) };
          // another program may have claimed it since it was looked for: then nothing is changed here
          const { numInsertedOrUpdatedRows } = await transaction
            .insertInto('run_review')
            .values({
              shop,
              run_id: row.id,
              program_version: version,
              tries: 1,
              ...NOTHING_FOUND,
              claim,
              claimed_until: claimEnd(moment),
            })
            .onConflict((conflict) =>
              conflict
                .columns(['shop', 'run_id', 'program_version'])
                .doUpdateSet((set) => ({
                  tries: set('run_review.tries', '+', 1),
                  claim,
                  claimed_until: claimEnd(moment),
                }))
                .where('run_review.reviewed_at', 'is', null)
                .where((where) =>
                  where.or([
                    where('run_review.claimed_until', 'is', null),
                    where('run_review.claimed_until', '<=', moment.toISOString()),
                  ]),
                ),
            )
            .executeTakeFirst();
          if (numInsertedOrUpdatedRows === 1n) return { run: runOf(row), held: false };
        }
      }),
    holdReview: (claim) =>
      transact(async (transaction) => {
        await transaction
          .updateTable('run_review')
          .set({ claimed_until: claimEnd(now()) })
          .where('shop', '=', shop)
          .where('claim', '=', claim)
          .execute();
      }),
    reviewed: (id, version, findings) =>
      transact(async (transaction) => {
        if ((await find(transaction, id)) === undefined) return;
        const found = { ...findings, reviewed_at: now().toISOString(), claim: null, claimed_until: null };
        await transaction
          .insertInto('run_review')
          .values({ shop, run_id: id, program_version: version, tries: 1, ...found })
          .onConflict((conflict) =>
            conflict.columns(['shop', 'run_id', 'program_version']).doUpdateSet(found),
          )
          .execute();
      }),
    forgetReviews: (id, version) =>
      transact(async (transaction) => {
        await transaction
          .deleteFrom('run_review')
          .where('shop', '=', shop)
          .where('run_id', '=', id)
          .where('program_version', '=', version)
          .execute();
      }),
    erase: (id) => {
      let erased: StoredRun | undefined;
      return transact(async (transaction, note) => {
        erased = (await find(transaction, id)) ?? erased;
        await eraseRows({ transaction, note }, shop, [id]);
        return erased;
      });
    },
    hashesOf: (jobId) =>
      run(async () =>
        (
          await kysely
            .selectFrom('run')
            .select('sha256')
            .distinct()
            .where('shop', '=', shop)
            .where('job_id', '=', jobId)
            .execute()
        ).flatMap(({ sha256 }) => (sha256 === null ? [] : [sha256])),
      ),
    hasFile: (sha256) =>
      run(async () => {
        const row = await kysely
          .selectFrom('run')
          .select('id')
          .where('sha256', '=', sha256)
          .executeTakeFirst();
        return row !== undefined;
      }),
  };
}

function claimEnd(moment: Date): string {
  return new Date(moment.getTime() + CLAIM_TIME).toISOString();
}

const NOTHING_FOUND = { reviewed_at: null, report: null, summary: null, trouble: null };

/** Erases the runs of a job for good, with all that was found of them. */
export async function eraseRuns({ transaction, note }: Turn, shop: string, jobId: string): Promise<void> {
  const rows = await transaction
    .selectFrom('run')
    .select('id')
    .where('shop', '=', shop)
    .where('job_id', '=', jobId)
    .execute();
  await eraseRows(
    { transaction, note },
    shop,
    rows.map(({ id }) => id),
  );
}

async function eraseRows({ transaction, note }: Turn, shop: string, ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return;
  await transaction
    .deleteFrom('run_review')
    .where('shop', '=', shop)
    .where('run_id', 'in', [...ids])
    .execute();
  const erased = await transaction
    .deleteFrom('run')
    .where('shop', '=', shop)
    .where('id', 'in', [...ids])
    .returning('id')
    .execute();
  for (const { id } of erased) note({ act: 'erase', kind: 'run', thing: id });
}

function runOf(row: RunRow): StoredRun {
  const { id, job_id, name, revision_number, revision, kit_number, knowledge_number, logger, source } = row;
  const { begun_at, sha256, bytes } = row;
  return {
    id,
    job_id,
    name,
    revision_number,
    revision,
    kit_number,
    knowledge_number,
    logger,
    source,
    begun_at,
    rehearsal: row.rehearsal === 1,
    original: sha256 === null ? null : { sha256, bytes: bytes ?? 0 },
  };
}

function reviewOf({ program_version, reviewed_at, report, summary, trouble }: RunReviewRow): StoredReview {
  return { program_version, reviewed_at: reviewed_at ?? '', report, summary, trouble };
}
