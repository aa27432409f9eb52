import { randomUUID } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openCompany, THE_SHOP } from '@furrow/store';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { EXIT } from '../frame/exit-code.ts';
import { originalsIn } from '../frame/store-place.ts';
import { run as backup } from './backup.ts';
import { run as exportAll } from './export.ts';
import { run as restore } from './restore.ts';

const POCKET = new URL('../../../../examples/defect-pocket.yaml', import.meta.url);
let root: string;
let data: string;
let jobId: string;
let sha256: string;
beforeEach(async () => {
  root = mkdtempSync(join(tmpdir(), 'furrow-keep-'));
  data = join(root, 'data');
  const company = await openCompany({ folder: data }, { now: () => new Date(), newId: randomUUID });
  const store = company.shop(THE_SHOP);
  const text = readFileSync(POCKET, 'utf8');
  jobId = (await store.create({ text, title: '=Pocket', revision: 'r' })).id;
  await store.save(jobId, { text: `${text}# again\n`, title: '=Pocket', revision: 'r' }, 1);
  await store.kit.save({ text: '{"furrow_kit": 1}', title: 'k', revision: null }, 0);
  await store.faultCases.put({ id: 'f', cause: '=cmd()', symptoms: { 'a,b': 'yes "no"' } });
  async function* log() {
    yield Buffer.from('t,U\n0,30\n');
  }
  const original = await originalsIn(data)(THE_SHOP).put(log());
  sha256 = original.sha256;
  const made = { name: 'r', revision_number: 1, kit_number: null, knowledge_number: null, logger: null };
  await store.runs.add(jobId, { ...made, id: randomUUID(), rehearsal: false, source: null, original });
  await company.close();
});
afterEach(() => rmSync(root, { recursive: true }));

const STREAMS = { print: () => {}, problem: () => {}, progress: undefined };

test('backup writes one file that only its owner reads, and never over another', async () => {
  const file = join(root, 'all.backup');
  const told = await backup([file], { data }, STREAMS);
  expect([told.exit, told.print]).toEqual([
    EXIT.plan,
    expect.stringMatching(/^Backup of \d+ rows and 1 files/u),
  ]);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(readdirSync(root).sort()).toEqual(['all.backup', 'data']);
  const again = await backup([file], { data }, STREAMS);
  expect([again.exit, again.problem]).toEqual([EXIT.badInput, [expect.stringContaining('is there already')]]);
  const nowhere = await backup([join(root, 'none', 'x')], { data }, STREAMS);
  expect([nowhere.exit, nowhere.problem?.[0]]).toEqual([
    EXIT.badInput,
    expect.stringContaining('could not be written'),
  ]);
});

test('restore brings it back elsewhere, into an empty place only', async () => {
  const file = join(root, 'all.backup');
  await backup([file], { data }, STREAMS);
  const elsewhere = join(root, 'elsewhere');
  const told = await restore([file], { data: elsewhere }, STREAMS);
  expect([told.exit, told.print]).toEqual([EXIT.plan, expect.stringContaining('The history agrees')]);
  expect(await originalsIn(elsewhere)(THE_SHOP).bytes(sha256)).toBe(9);
  const twice = await restore([file], { data: elsewhere }, STREAMS);
  expect([twice.exit, twice.problem?.[0]]).toEqual([EXIT.badInput, expect.stringContaining('already')]);
  writeFileSync(file, 'x');
  expect((await restore([file], { data: join(root, 'third') }, STREAMS)).exit).toBe(EXIT.badInput);
});

test('export writes files that other programs read, papers too', async () => {
  const folder = join(root, 'out');
  const told = await exportAll([folder], { data, papers: true } as never, STREAMS);
  expect([told.exit, told.problem]).toEqual([EXIT.plan, []]);
  const job = join(folder, 'main', 'jobs', jobId);
  expect(readFileSync(join(job, 'job', 'revision-1.yaml'), 'utf8')).toBe(readFileSync(POCKET, 'utf8'));
  expect(readdirSync(join(job, 'job'))).toHaveLength(2);
  expect(readdirSync(join(folder, 'main', 'kit'))).toEqual(['revision-1.json']);
  expect(readFileSync(join(folder, 'main', 'faults.csv'), 'utf8')).toBe(
    'case,cause,seen,answer\r\nf,\'=cmd(),"a,b","yes ""no"""\r\n',
  );
  const [run = ''] = readdirSync(join(job, 'runs'));
  expect(readFileSync(join(job, 'runs', run, 'log'), 'utf8')).toBe('t,U\n0,30\n');
  expect(readFileSync(join(job, 'papers', 'set-up-card.pdf'), 'latin1')).toMatch(/^%PDF/u);
  const history = readFileSync(join(folder, 'main', 'history.csv'), 'utf8')
    .trim()
    .split('\r\n');
  expect(history.slice(1).map((line) => line.split(',')[0])).toEqual(['1', '2', '3', '4', '5']);
  expect(existsSync(join(folder, 'accounts.csv'))).toBe(true);
  const again = await exportAll([folder], { data, papers: false } as never, STREAMS);
  expect(again.exit).toBe(EXIT.badInput);
});

test('export tells what is gone, and goes on', async () => {
  rmSync(originalsIn(data)(THE_SHOP).path(sha256));
  const told = await exportAll([join(root, 'out')], { data, papers: false } as never, STREAMS);
  expect([told.exit, told.problem]).toEqual([EXIT.refusal, [`The file ${sha256} is gone.`]]);
});
