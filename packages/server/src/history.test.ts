import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { API_PATHS, fillPath, type HistoryEntry, type PaperList, type SavedJob } from '@furrow/contract';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type TestCompany, testCompany } from './testing/test-company.ts';
import { EXAMPLES } from './testing/test-server.ts';

const text = readFileSync(join(EXAMPLES, 'defect-pocket.yaml'), 'utf8');
let test: TestCompany;
const headersOf = new Map<string, { cookie: string }>();
beforeAll(async () => {
  test = await testCompany();
  await test.add('boss', true);
  await test.add('Ada', false, { main: 'engineer' });
  await test.add('Vic', false, { main: 'viewer' });
  for (const name of ['boss', 'Ada', 'Vic']) headersOf.set(name, { cookie: await test.signIn(name) });
});
afterAll(async () => {
  expect(test.faults).toEqual([]);
  await test.cleanUp();
});

const as = (name: string) => ({ headers: headersOf.get(name)! });
const get = (name: string, url: string) => test.server.inject({ url, ...as(name) });
const post = (name: string, url: string, payload: object) =>
  test.server.inject({ method: 'POST', url, payload, ...as(name) });

describe('who changed what', () => {
  it('is told to whoever may look, with the names of those who did', async () => {
    const { id } = (await post('Ada', API_PATHS.jobs, { text: 'title: Seam' })).json<SavedJob>();
    const entries = (await get('Vic', API_PATHS.history)).json<HistoryEntry[]>();
    expect(entries[0]).toMatchObject({ who: 'Ada', act: 'save', kind: 'job', thing: id, after: '1' });
    const job = (await get('Vic', fillPath(API_PATHS.job, { id }))).json<SavedJob>();
    expect(job.saved_by).toBe('Ada');
    expect((await get('Vic', API_PATHS.companyHistory)).statusCode).toBe(403);
    await post('boss', API_PATHS.shops, { id: 'quay', name: 'Quay' });
    expect((await get('boss', API_PATHS.companyHistory)).json<HistoryEntry[]>()[0]).toMatchObject({
      who: 'boss',
      act: 'add',
      kind: 'shop',
      after: 'Quay',
    });
    expect((await test.company.audit()).problems).toEqual([]);
  });
});

describe('a paper', () => {
  it('names the account that released it, and says where none did', async () => {
    const { id } = (await post('Ada', API_PATHS.jobs, { text })).json<SavedJob>();
    const page = fillPath(API_PATHS.jobPaperPage, { id, file: 'set-up-card' });
    expect((await get('Vic', page)).body).toContain('not released');
    const list = (await get('Ada', fillPath(API_PATHS.jobPapers, { id }))).json<PaperList>();
    const { revision_number, kit_revision, knowledge_id } = list;
    const printed = { file: 'set-up-card.pdf', revision_number, kit_revision, knowledge_id };
    const path = fillPath(API_PATHS.jobPrinted, { id });
    expect((await post('Vic', path, printed)).statusCode).toBe(403);
    expect((await post('Ada', path, printed)).statusCode).toBe(204);
    expect((await get('Vic', page)).body).toContain('released by Ada on 2026-01-05 06:00 UTC');
    // another paper, and the same after a change, are not released by that
    const other = fillPath(API_PATHS.jobPaperPage, { id, file: 'hot-work-sheet' });
    expect((await get('Vic', other)).body).toContain('not released');
    await test.server.inject({
      method: 'PUT',
      url: fillPath(API_PATHS.job, { id }),
      payload: { text: text.replace(/^title: .*$/mu, 'title: Another'), based_on: 1 },
      ...as('Ada'),
    });
    expect((await get('Vic', page)).body).toContain('not released');
    const now = (await get('Ada', fillPath(API_PATHS.jobPapers, { id }))).json<PaperList>();
    expect(now.papers[0]?.printed).toMatchObject({ released_by: 'Ada', superseded: true });
  });
});
