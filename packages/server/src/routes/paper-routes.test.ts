import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { API_PATHS, fillPath, type PaperList, type SavedJob, type SavedShopFile } from '@furrow/contract';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildServer } from '../build-server.ts';
import { SMALL_KIT } from '../testing/small-kit.ts';
import { EXAMPLES, type TestParts, testParts } from '../testing/test-server.ts';
import type { ZodServer } from './zod-server.ts';

const text = readFileSync(join(EXAMPLES, 'defect-pocket.yaml'), 'utf8');
let test: TestParts;
let server: ZodServer;
let id: string;
beforeAll(async () => {
  test = await testParts();
  server = await buildServer(test.parts);
  const reply = await server.inject({ method: 'POST', url: API_PATHS.jobs, payload: { text } });
  ({ id } = reply.json<SavedJob>());
});
afterAll(async () => {
  await server.close();
  await test.cleanUp();
  expect(test.faults).toEqual([]);
});

async function listed(query = ''): Promise<PaperList> {
  const reply = await server.inject(`${fillPath(API_PATHS.jobPapers, { id })}${query}`);
  expect(reply.statusCode).toBe(200);
  return reply.json<PaperList>();
}

function paper(list: PaperList, file: string): PaperList['papers'][number] {
  const found = list.papers.find((each) => each.file === file);
  if (found === undefined) throw new Error(`${file} is not listed`);
  return found;
}

const code = (reply: { json: () => unknown }): string => (reply.json() as { code: string }).code;

describe('the papers of a job', () => {
  it('are listed with why one is wanting, and none printed at first', async () => {
    const list = await listed();
    expect(list.revision_number).toBe(1);
    expect(list.kit_revision).toBeNull();
    expect(paper(list, 'procedure-sheet.pdf')).toMatchObject({ wanting: null, printed: null });
    expect(paper(list, 'commissioning-sheet.pdf').wanting).toContain('without a kit');
    expect(paper(list, 'section.dxf')).toMatchObject({ page: null, wanting: null });
    expect(paper(list, 'bay.svg').wanting).not.toBeNull();
  });

  it.each([
    ['run-record.pdf', 'application/pdf', '%PDF-'],
    ['section.svg', 'image/svg+xml', '<?xml'],
    ['seam-strip.dxf', 'image/vnd.dxf', '0\nSECTION'],
  ])('%s comes as %s', async (file, type, start) => {
    const reply = await server.inject(fillPath(API_PATHS.jobPaper, { id, file }));
    expect([reply.statusCode, reply.headers['content-type']]).toEqual([200, type]);
    expect(reply.headers['content-disposition']).toContain(`filename="${file}"`);
    expect(reply.rawPayload.subarray(0, start.length).toString()).toBe(start);
  });

  it('come as pages that may be framed and hold no script, with a code that leads to the job', async () => {
    const page = await server.inject(fillPath(API_PATHS.jobPaperPage, { id, file: 'groove-report' }));
    expect(page.statusCode).toBe(200);
    expect(page.body).toContain(`/jobs/${id}`);
    expect(page.body).not.toMatch(/<script|<style|\sstyle=|\son\w+=/i);
    expect(page.headers['content-security-policy']).toContain("frame-ancestors 'self'");
  });

  it('of a demo job come without saving it', async () => {
    const name = 'casting-wash';
    const list = (await server.inject(fillPath(API_PATHS.examplePapers, { name }))).json<PaperList>();
    expect(list.revision_number).toBeNull();
    const file = 'section.dxf';
    expect((await server.inject(fillPath(API_PATHS.examplePaper, { name, file }))).statusCode).toBe(200);
    const page = await server.inject(fillPath(API_PATHS.examplePaperPage, { name, file: 'set-up-card' }));
    expect(page.body).toContain('furrow:revision:');
    const none = await server.inject(fillPath(API_PATHS.examplePapers, { name: 'none' }));
    expect([none.statusCode, code(none)]).toEqual([404, 'PATH_NOT_FOUND']);
  });

  it.each([
    ['secret.pdf', 404, 'PATH_NOT_FOUND'],
    ['section.pdf', 404, 'PATH_NOT_FOUND'],
    ['constructor.svg', 404, 'PATH_NOT_FOUND'],
    ['section.svg.dxf', 404, 'PATH_NOT_FOUND'],
    ['commissioning-sheet.pdf', 422, 'PAPER_WANTING'],
    ['bay.dxf', 422, 'PAPER_WANTING'],
  ])('there is no %s: %i %s', async (file, status, wanted) => {
    const reply = await server.inject(fillPath(API_PATHS.jobPaper, { id, file }));
    expect([reply.statusCode, code(reply)]).toEqual([status, wanted]);
  });
});

describe('a paper that is filled in', () => {
  const filled = (readings: string, file = 'groove-report.pdf') =>
    server.inject({ method: 'POST', url: fillPath(API_PATHS.jobPaper, { id, file }), payload: { readings } });
  const readings = 'furrow_readings: 1\nstations:\n  - { at: 50 mm, depth: 6 mm }\n';

  it('differs from the empty one, for a saved job and for a demo job', async () => {
    const empty = await server.inject(fillPath(API_PATHS.jobPaper, { id, file: 'groove-report.pdf' }));
    const reply = await filled(readings);
    expect([reply.statusCode, reply.headers['content-type']]).toEqual([200, 'application/pdf']);
    expect(reply.rawPayload.equals(empty.rawPayload)).toBe(false);
    const demo = { name: 'defect-pocket', file: 'run-record.pdf' };
    const url = fillPath(API_PATHS.examplePaper, demo);
    expect((await server.inject({ method: 'POST', url, payload: { readings } })).statusCode).toBe(200);
  });

  it('counts the readings of a demo job as good as the demo gauge, in a shop that keeps none', async () => {
    const [gauge] = (await server.inject(API_PATHS.gaugeExamples)).json<{ title: string; text: string }[]>();
    expect(gauge!.title).toBe('bridge gauge 3');
    const url = fillPath(API_PATHS.examplePaper, { name: 'defect-pocket', file: 'groove-report.pdf' });
    const reported = async () =>
      (await server.inject({ method: 'POST', url, payload: { readings } })).rawPayload;
    const keep = (text: string, based_on: number) =>
      server.inject({ method: 'PUT', url: API_PATHS.gauge, payload: { text, based_on } });
    const none = await reported();
    await keep(gauge!.text.replace('seating: 0.2 mm', 'seating: 0.6 mm'), 0);
    expect((await reported()).equals(none)).toBe(false);
    await keep(gauge!.text, 1);
    expect((await reported()).equals(none)).toBe(true);
    await keep('', 2);
  });

  it('is refused with the place of what cannot be read', async () => {
    const reply = await filled(readings.replace('6 mm', '6'));
    expect([reply.statusCode, code(reply)]).toEqual([422, 'READINGS_NOT_READABLE']);
    expect(reply.json<{ issues: { position: { line: number } }[] }>().issues[0]?.position.line).toBe(3);
  });
});

const TRIALS = `furrow_trials: 1
shop: yard
entries:
  - id: t-01
    date: "2026-01-12"
    material: carbon_steel
    electrode: { diameter: 1/2 in, kind: jointed }
    passes: [{ current: 840 A, travel: 700 mm/min, stations: [{ at: 50 mm, depth: 15.1 mm }] }]
`;

describe('a paper that was handed out', () => {
  const printed = (payload: object) =>
    server.inject({ method: 'POST', url: fillPath(API_PATHS.jobPrinted, { id }), payload });

  it('is good until the job or the kit changes, and then told to be superseded, with what changed', async () => {
    const file = 'set-up-card.pdf';
    const { revision_number, kit_revision, knowledge_id } = await listed();
    expect((await printed({ file, revision_number, kit_revision, knowledge_id })).statusCode).toBe(204);
    expect(paper(await listed(), file).printed).toMatchObject({ revision_number: 1, superseded: false });

    const changed = text.replace(/wanted: \d+ mm/, 'wanted: 9 mm');
    expect(changed).not.toBe(text);
    const save = { text: changed, based_on: 1 };
    await server.inject({ method: 'PUT', url: fillPath(API_PATHS.job, { id }), payload: save });
    const after = paper(await listed('?units=metric'), file).printed;
    expect(after).toMatchObject({ revision_number: 1, superseded: true });
    expect(after?.changes).toHaveLength(1);
    expect(after?.changes[0]).toMatch(/^Groove, depth: .* before, 9\.0 mm now\.$/);

    const back = { text, based_on: 2 };
    await server.inject({ method: 'PUT', url: fillPath(API_PATHS.job, { id }), payload: back });
    expect(paper(await listed(), file).printed).toMatchObject({ superseded: false, changes: [] });

    const { revision_number: based_on } = (await server.inject(API_PATHS.kit)).json<SavedShopFile>();
    await server.inject({ method: 'PUT', url: API_PATHS.kit, payload: { text: SMALL_KIT, based_on } });
    const withKit = paper(await listed(), file).printed;
    expect(withKit?.changes).toEqual([
      'Kit: planned with “Two sources and a roll of hose”, without one before.',
    ]);
    expect(paper(await listed('?kit=none'), file).printed).toMatchObject({ superseded: false });

    const taught = { text: TRIALS, based_on: 0 };
    await server.inject({ method: 'PUT', url: API_PATHS.knowledge, payload: taught });
    expect(paper(await listed('?kit=none'), file).printed?.changes).toEqual([
      'The shop has learned more since: it knows 1 trial and 0 jobs, the latest of 2026-01-12.',
    ]);
    expect(paper(await listed('?kit=none&history=none'), file).printed).toMatchObject({ superseded: false });
    expect(paper(await listed(), 'quote.pdf').printed).toBeNull();
  });

  it.each([
    [{ file: 'other.pdf', revision_number: 1, kit_revision: null }, 404, 'PATH_NOT_FOUND'],
    [{ file: 'quote.pdf', revision_number: 99, kit_revision: null }, 404, 'REVISION_NOT_FOUND'],
    [{ file: 'quote.pdf', revision_number: 1, kit_revision: 'x' }, 400, 'REQUEST_INVALID'],
    [{ file: 'quote.pdf', revision_number: 1 }, 400, 'REQUEST_INVALID'],
  ])('is not kept for %j', async (payload, status, wanted) => {
    const reply = await printed(payload);
    expect([reply.statusCode, code(reply)]).toEqual([status, wanted]);
  });
});
