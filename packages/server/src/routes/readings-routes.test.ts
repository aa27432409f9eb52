import { readFileSync } from 'node:fs';
import { API_PATHS, fillPath, type SavedJob, type SavedShopFile } from '@furrow/contract';
import type { SurveyReport } from '@furrow/engine';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { buildServer } from '../build-server.ts';
import { EXAMPLES, type TestParts, testParts } from '../testing/test-server.ts';
import type { ZodServer } from './zod-server.ts';

const readings = 'furrow_readings: 1\ndate: 2026-03-04\nstations:\n  - { at: 0.1 m, depth: 12 mm }\n';
const unknown = '00000000-0000-4000-8000-999999999999';
const job = readFileSync(`${EXAMPLES}/defect-pocket.yaml`, 'utf8');

let test: TestParts;
let server: ZodServer;
let id: string;
let url: string;
beforeEach(async () => {
  test = await testParts();
  server = await buildServer(test.parts);
  const reply = await server.inject({ method: 'POST', url: API_PATHS.jobs, payload: { text: job } });
  ({ id } = reply.json<SavedJob>());
  url = fillPath(API_PATHS.jobReadings, { id });
});
afterEach(async () => {
  await server.close();
  await test.cleanUp();
  expect(test.faults).toEqual([]);
});

function save(text: string, based_on: number) {
  return server.inject({ method: 'PUT', url, payload: { text, based_on } });
}

describe('what was run and gauged on a job', () => {
  it('is nothing at first, then kept with every revision, drafts with mistakes too', async () => {
    expect((await server.inject(url)).json()).toMatchObject({ revision_number: 0, text: '', saved_at: null });
    expect((await save(readings, 0)).json()).toMatchObject({ revision_number: 1, valid: true });
    const draft = (await save('furrow_readings: 1\nstations: [{ at: here }]\n', 1)).json<SavedShopFile>();
    expect(draft).toMatchObject({ revision_number: 2, valid: false });
    expect(draft.issues.length).toBeGreaterThan(0);
    const history = await server.inject(fillPath(API_PATHS.jobReadingsRevisions, { id }));
    expect(history.json<SavedShopFile[]>().map((each) => each.revision_number)).toEqual([2, 1]);
    const first = await server.inject(fillPath(API_PATHS.jobReadingsRevision, { id, number: 1 }));
    expect(first.json()).toMatchObject({ text: readings });
    const none = await server.inject(fillPath(API_PATHS.jobReadingsRevision, { id, number: 3 }));
    expect([none.statusCode, none.json().code]).toEqual([404, 'REVISION_NOT_FOUND']);
  });

  it('is not overwritten where somebody else saved since', async () => {
    await save(readings, 0);
    const refused = await save(`${readings}note: mine\n`, 0);
    expect(refused.statusCode).toBe(409);
    expect(refused.json()).toMatchObject({
      code: 'READINGS_CHANGED_MEANWHILE',
      newer: { revision_number: 1, text: readings },
    });
  });

  it('is erased for good, and belongs to a job that is there', async () => {
    await save(readings, 0);
    expect((await server.inject({ method: 'DELETE', url })).statusCode).toBe(204);
    expect((await server.inject(url)).json()).toMatchObject({ revision_number: 0 });
    for (const path of [API_PATHS.jobReadings, API_PATHS.jobReadingsRevisions, API_PATHS.jobSurvey] as const)
      expect((await server.inject(fillPath(path, { id: unknown }))).statusCode).toBe(404);
  });

  it('says what it means for the groove, and refuses what cannot be read', async () => {
    const address = fillPath(API_PATHS.jobSurvey, { id });
    const nothing = (await server.inject(address)).json<SurveyReport>();
    expect(nothing.seam!.remarks.join(' ')).toContain('Nothing was measured');
    await save(readings, 0);
    const measured = (await server.inject(address)).json<SurveyReport>();
    expect(measured.seam!.readings).toMatchObject([{ at_mm: 100, depth_mm: { value: 12 }, used: true }]);
    // a gauge that the shop keeps says how good a reading is, here and on the report
    const gauge = readFileSync(`${EXAMPLES}/gauges/bridge-gauge.yaml`, 'utf8');
    const put = (text: string, based_on: number) =>
      server.inject({ method: 'PUT', url: API_PATHS.gauge, payload: { text, based_on } });
    expect((await put(gauge, 0)).json<SavedShopFile>()).toMatchObject({
      title: 'bridge gauge 3',
      valid: true,
    });
    expect((await server.inject(address)).json<SurveyReport>().inputs.gauge_u_from).toMatch(
      /^bridge gauge 3: a crossed gauge study/u,
    );
    const report = await server.inject(fillPath(API_PATHS.jobPaperPage, { id, file: 'groove-report' }));
    expect(report.body).toContain('bridge gauge 3: a crossed gauge study');
    await put('furrow_gauge: 1\n', 1);
    const draft = await server.inject(address);
    expect([draft.statusCode, draft.json().code]).toEqual([422, 'GAUGE_NOT_READABLE']);
    // an emptied gauge is none
    await put('', 2);
    expect((await server.inject(address)).json<SurveyReport>().inputs.gauge_u_from).not.toContain('bridge');
    await save('furrow_readings: 1\nstations: [{ at: here }]\n', 1);
    const refused = await server.inject(address);
    expect([refused.statusCode, refused.json().code]).toEqual([422, 'READINGS_NOT_READABLE']);
  });
});
