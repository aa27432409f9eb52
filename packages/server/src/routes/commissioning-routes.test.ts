import {
  API_PATHS,
  type Commissioning,
  type CommissioningConflict,
  fillPath,
  type SavedJob,
} from '@furrow/contract';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { buildServer } from '../build-server.ts';
import { type TestParts, testParts } from '../testing/test-server.ts';
import type { ZodServer } from './zod-server.ts';

const finding = {
  id: '00000000-0000-4000-8000-00000000f001',
  symptoms: { hot_joint: 'yes', joint_millivolts: 'unknown' },
  cause: null,
  note: 'third lug from the source',
};
const entry = {
  readings: { open_circuit: { text: '72,4 V', value: 72.4, note: '' } },
  ticks: ['power-1', 'air-1'],
  findings: [finding],
};
const unknown = '00000000-0000-4000-8000-999999999999';

let test: TestParts;
let server: ZodServer;
let id: string;
let url: string;
beforeEach(async () => {
  test = await testParts();
  server = await buildServer(test.parts);
  const reply = await server.inject({ method: 'POST', url: API_PATHS.jobs, payload: { text: 'title: a' } });
  ({ id } = reply.json<SavedJob>());
  url = fillPath(API_PATHS.jobCommissioning, { id });
});
afterEach(async () => {
  await server.close();
  await test.cleanUp();
  expect(test.faults).toEqual([]);
});

function save(body: object, to = url) {
  return server.inject({ method: 'PUT', url: to, payload: body });
}

async function kept(): Promise<Commissioning> {
  return (await server.inject(url)).json<Commissioning>();
}

describe('what is read at the rig', () => {
  it('is nothing at first', async () => {
    expect(await kept()).toEqual({
      job_id: id,
      revision_number: 0,
      saved_at: null,
      readings: {},
      ticks: {},
      findings: [],
    });
  });

  it('is kept with the job, each entry with its time', async () => {
    const reply = await save({ ...entry, based_on: 0 });
    expect(reply.statusCode).toBe(200);
    const first = reply.json<Commissioning>();
    const at = first.saved_at;
    expect(first).toEqual({
      job_id: id,
      revision_number: 1,
      saved_at: expect.stringMatching(/^2026-01-05T/),
      readings: { open_circuit: { ...entry.readings.open_circuit, at } },
      ticks: { 'power-1': at, 'air-1': at },
      findings: [{ ...finding, at }],
    });
    expect(await kept()).toEqual(first);

    const readings = { ...entry.readings, standing: { text: 'about 95', value: null, note: 'gauge sticks' } };
    const second = (await save({ ...entry, readings, based_on: 1 })).json<Commissioning>();
    expect(second.readings['open_circuit']?.at).toBe(at);
    expect(second.readings['standing']).toEqual({ ...readings.standing, at: second.saved_at });
    expect(second.saved_at).not.toBe(at);
    expect(await kept()).toEqual(second);
  });

  it('leaves the job and its revisions alone', async () => {
    const job = (await server.inject(fillPath(API_PATHS.job, { id }))).json<SavedJob>();
    await save({ ...entry, based_on: 0 });
    expect((await server.inject(fillPath(API_PATHS.job, { id }))).json()).toEqual(job);
  });

  it('is not overwritten by somebody who has not seen it', async () => {
    const newer = (await save({ ...entry, based_on: 0 })).json<Commissioning>();
    const late = await save({ ...entry, ticks: [], based_on: 0 });
    expect(late.statusCode).toBe(409);
    expect(late.json<CommissioningConflict>()).toMatchObject({
      code: 'COMMISSIONING_CHANGED_MEANWHILE',
      message: expect.stringContaining('Nothing was overwritten'),
      newer,
    });
    expect(await kept()).toEqual(newer);
  });

  it('has no place with a job that is not there', async () => {
    const other = fillPath(API_PATHS.jobCommissioning, { id: unknown });
    for (const reply of [await server.inject(other), await save({ ...entry, based_on: 0 }, other)]) {
      expect([reply.statusCode, reply.json<{ code: string }>().code]).toEqual([404, 'JOB_NOT_FOUND']);
    }
  });

  it.each([
    ['no base', { ...entry }],
    ['a value that is no number', { readings: { a: { text: '', value: '7', note: '' } } }],
    ['a value beyond numbers', { readings: { a: { text: '', value: Number.POSITIVE_INFINITY } } }],
    ['a check without a name', { readings: { '': { text: '7', value: 7, note: '' } } }],
    ['an endless note', { readings: { a: { text: '7', value: 7, note: 'x'.repeat(2001) } } }],
    ['too many ticks', { ticks: Array.from({ length: 501 }, (_, row) => `row-${row}`) }],
    ['an outcome that is none', { findings: [{ ...finding, symptoms: { hot_joint: 'maybe' } }] }],
    ['characters that cannot be saved', { readings: { a: { text: 'a\0', value: null, note: '' } } }],
  ])('is refused with %s', async (what, part) => {
    const base = what === 'no base' ? {} : { based_on: 0 };
    const reply = await save({ readings: {}, ticks: [], findings: [], ...part, ...base });
    expect([reply.statusCode, reply.json<{ code: string }>().code]).toEqual([400, 'REQUEST_INVALID']);
    expect((await kept()).revision_number).toBe(0);
  });
});
