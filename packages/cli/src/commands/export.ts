import { randomUUID } from 'node:crypto';
import { copyFileSync, createWriteStream, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { PROGRAM_VERSION } from '@furrow/contract';
import { answerJob, knowledgeFrom, readJob, readKit, readReadings, readTrials } from '@furrow/engine';
import {
  type Company,
  OriginalDamaged,
  type Originals,
  openCompany,
  type Store,
  StoreFailure,
} from '@furrow/store';
import { badInput, type Run } from '../frame/command.ts';
import { EXIT } from '../frame/exit-code.ts';
import { folderOf, originalsIn, type StoreOptions, storePlace } from '../frame/store-place.ts';
import type { Streams } from '../frame/streams.ts';
import { csvText } from '../output/csv.ts';
import { DISK, whyUnwritable } from '../output/disk.ts';
import { paperFiles } from '../output/paper-files.ts';

interface ExportOptions extends StoreOptions {
  /** Whether each job is planned and its papers are written too. */
  readonly papers: boolean;
}

/** Entries of a history that are read at a time [-]. */
const AT_A_TIME = 200;
const SHA256 = /\b[0-9a-f]{64}\b/gu;

/** Writes everything that is kept as files that other programs read; what was left out is told. */
export const run: Run<ExportOptions> = async ([folder = ''], options, streams) => {
  if (existsSync(folder) && readdirSync(folder).length > 0)
    return badInput([`${folder} holds something already; nothing was written.`]);
  try {
    const company = await openCompany(storePlace(options), { now: () => new Date(), newId: randomUUID });
    try {
      const originalsOf = originalsIn(folderOf(options));
      const left: string[] = [];
      const shops = await company.people.shops();
      for (const { id } of shops) {
        const target = { folder: join(folder, id), papers: options.papers, left, streams };
        await exportShop(company.shop(id), originalsOf(id), target);
      }
      await exportCompany(company, folder);
      const exit = left.length === 0 ? EXIT.plan : EXIT.refusal;
      const count = shops.length === 1 ? 'One shop' : `${shops.length} shops`;
      return { exit, print: `${count} exported into ${folder}.`, problem: left };
    } finally {
      await company.close();
    }
  } catch (error) {
    if (error instanceof StoreFailure) return badInput([error.message]);
    const why = whyUnwritable(error);
    if (why === undefined) throw error;
    return badInput([`${folder}: the export broke off: ${why}`]);
  }
};

/** Where a shop is exported to, and how. */
interface Target {
  readonly folder: string;
  readonly papers: boolean;
  /** Takes what could not be exported, a sentence each. */
  readonly left: string[];
  readonly streams: Streams;
}

async function exportCompany({ people, history }: Company, folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const accounts = await people.accounts();
  const rows = accounts.flatMap(({ id, name, administrator, shut, shops }) => {
    const line = [id, name, administrator ? 'administrator' : '', shut ? 'shut' : 'open'];
    const roles = Object.entries(shops);
    return roles.length === 0 ? [[...line, '', '']] : roles.map(([shop, role]) => [...line, shop, role]);
  });
  const names = ['account', 'name', 'company', 'state', 'shop', 'role'];
  DISK.writeNew(join(folder, 'accounts.csv'), csvText(names, rows));
  DISK.writeNew(join(folder, 'history.csv'), await historyText(history));
}

async function exportShop(store: Store, originals: Originals, target: Target): Promise<void> {
  const { folder } = target;
  mkdirSync(folder, { recursive: true });
  for (const name of ['kit', 'knowledge', 'gauge'] as const)
    await writeRevisions(
      join(folder, name),
      (await store[name].revisions()).map(({ revision_number }) => revision_number),
      async (number) => (await store[name].revision(number))?.text,
    );
  for (const { revision, text } of await store.loggers.list()) {
    mkdirSync(join(folder, 'loggers'), { recursive: true });
    DISK.writeNew(join(folder, 'loggers', `${revision.slice(0, 16)}${endingOf(text)}`), text);
  }
  const faults = await store.faultCases.list();
  DISK.writeNew(
    join(folder, 'faults.csv'),
    csvText(
      ['case', 'cause', 'seen', 'answer'],
      faults.flatMap(({ id, cause, symptoms }) =>
        Object.entries(symptoms).map(([seen, answer]) => [id, cause, seen, answer]),
      ),
    ),
  );
  DISK.writeNew(join(folder, 'history.csv'), await historyText(store.history));
  for (const { id, title } of await store.list()) {
    target.streams.progress?.(`${title}`);
    await exportJob(store, originals, id, { ...target, folder: join(folder, 'jobs', id) });
  }
}

async function exportJob(store: Store, originals: Originals, id: string, target: Target): Promise<void> {
  const { folder } = target;
  mkdirSync(folder, { recursive: true });
  const revisions = (await store.revisions(id)) ?? [];
  await writeRevisions(
    join(folder, 'job'),
    revisions.map(({ revision_number }) => revision_number),
    async (number) => (await store.revision(id, number))?.text,
  );
  await writeRevisions(
    join(folder, 'readings'),
    ((await store.readings.revisions(id)) ?? []).map(({ revision_number }) => revision_number),
    async (number) => (await store.readings.revision(id, number))?.text,
  );
  const rig = await store.commissioning.get(id);
  if (rig !== undefined && rig.revision_number > 0)
    DISK.writeNew(join(folder, 'commissioning.json'), `${JSON.stringify(rig, null, 2)}\n`);
  const printed = (await store.printed.list(id)) ?? [];
  DISK.writeNew(
    join(folder, 'handed-out.csv'),
    csvText(
      ['paper', 'revision_number', 'revision', 'kit_revision', 'knowledge_id', 'printed_at', 'released_by'],
      printed.map((each) => [
        ...[each.paper, each.revision_number, each.revision, each.kit_revision, each.knowledge_id],
        ...[each.printed_at, each.released_by],
      ]),
    ),
  );
  for (const run of (await store.runs.list(id)) ?? []) {
    const runFolder = join(folder, 'runs', run.id);
    mkdirSync(runFolder, { recursive: true });
    const [review] = await store.runs.reviews(run.id);
    const { report, ...about } = review ?? { report: null };
    DISK.writeNew(join(runFolder, 'run.json'), `${JSON.stringify({ ...run, review: about }, null, 2)}\n`);
    if (report !== null) DISK.writeNew(join(runFolder, 'review.json'), report);
    if (run.original === null) continue;
    await copyOriginal(originals, run.original.sha256, join(runFolder, 'log'), target.left);
    const parquet = originals.parquetPath(run.original.sha256);
    if (existsSync(parquet)) copyFileSync(parquet, join(runFolder, 'rows.parquet'));
  }
  const readings = await store.readings.get(id);
  for (const sha256 of new Set(readings?.text.match(SHA256) ?? [])) {
    mkdirSync(join(folder, 'measured'), { recursive: true });
    await copyOriginal(originals, sha256, join(folder, 'measured', sha256), target.left);
  }
  if (target.papers) await exportPapers(store, id, target);
}

/** Papers as they would be made now; a draft has none. */
async function exportPapers(store: Store, id: string, { folder, left }: Target): Promise<void> {
  const saved = await store.get(id);
  const read = saved === undefined ? undefined : readJob(saved.text);
  if (read?.ok !== true) return;
  const kit = wholeOf((await store.kit.get())?.text, readKit);
  const trials = wholeOf((await store.knowledge.get())?.text, readTrials);
  const readings = wholeOf((await store.readings.get(id))?.text, readReadings);
  const knowledge = knowledgeFrom(trials, undefined);
  const answer = answerJob({ job: read.value, version: PROGRAM_VERSION, kit, knowledge });
  if (answer.plan === undefined) {
    left.push(`No papers of “${saved?.title}” (${id}): it has no plan.`);
    return;
  }
  const subject = { read: read.value, answer, kit, knowledge, readings };
  const { files } = await paperFiles(subject, { units: 'metric', paper: 'a4' });
  mkdirSync(join(folder, 'papers'), { recursive: true });
  for (const { file, bytes } of files) DISK.writeNew(join(folder, 'papers', file), bytes);
}

function wholeOf<Value>(
  text: string | undefined,
  read: (text: string) => { readonly ok: true; readonly value: Value } | { readonly ok: false },
): Value | undefined {
  const outcome = text === undefined ? undefined : read(text);
  return outcome?.ok === true ? outcome.value : undefined;
}

async function writeRevisions(
  folder: string,
  numbers: readonly number[],
  text: (number: number) => Promise<string | undefined>,
): Promise<void> {
  for (const number of numbers) {
    const content = await text(number);
    // erased meanwhile
    if (content === undefined) continue;
    mkdirSync(folder, { recursive: true });
    DISK.writeNew(join(folder, `revision-${number}${endingOf(content)}`), content);
  }
}

function endingOf(text: string): string {
  return text.trimStart().startsWith('{') ? '.json' : '.yaml';
}

async function copyOriginal(
  originals: Originals,
  sha256: string,
  path: string,
  left: string[],
): Promise<void> {
  if ((await originals.bytes(sha256)) === undefined) {
    left.push(`The file ${sha256} is gone.`);
    return;
  }
  try {
    await pipeline(originals.read(sha256), createWriteStream(path, { flags: 'wx' }));
  } catch (error) {
    if (!(error instanceof OriginalDamaged)) throw error;
    left.push(`${error.message} (${sha256})`);
  }
}

async function historyText(history: Store['history']): Promise<string> {
  const rows: (string | number | null)[][] = [];
  for (let before: number | undefined; before !== 1; ) {
    const entries = await history.list({ before, limit: AT_A_TIME });
    for (const each of entries)
      rows.push([
        ...[each.number, each.at, each.who.name, each.who.id, each.act, each.kind, each.thing],
        ...[each.before, each.after, each.content, each.previous, each.hash],
      ]);
    before = entries.at(-1)?.number ?? 1;
  }
  const what = ['act', 'kind', 'thing', 'before', 'after', 'content', 'previous', 'hash'];
  return csvText(['number', 'at', 'who', 'who_id', ...what], rows.reverse());
}
