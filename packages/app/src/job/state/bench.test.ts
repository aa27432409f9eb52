import { readFileSync } from 'node:fs';
import type { SavedJob } from '@furrow/contract';
import type { Answer } from '@furrow/engine';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { draftOf, isUnsaved } from '../../sheet/keep/index.ts';
import { FakeWorker, MemoryStorage, planOf } from '../../testing/index.ts';
import type { PlanRequest } from '../../work/index.ts';
import { type BenchStart, openBench } from './bench.ts';
import { isCurrent, isOutdated } from './bench-state.ts';

const DEMO = readFileSync(new URL('../../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8');
const ID = '5f0c2b0e-7c1f-4b59-9f7e-3a4a1f6f2a11';
const AT = '2026-11-25T10:00:00.000Z';
const SAVED = savedReply(DEMO, 3);

function setUp(start: BenchStart = { text: DEMO }, memory = new MemoryStorage()) {
  const worker = new FakeWorker<PlanRequest, Answer>();
  const bench = openBench(start, { startWorker: () => worker, memory });
  return { bench, memory, requests: worker.requests, worker, state: () => bench.store.get() };
}

function savedReply(text: string, revision_number: number): SavedJob {
  const revision = 'a'.repeat(64);
  return {
    id: ID,
    title: 't',
    revision,
    revision_number,
    saved_at: AT,
    saved_by: null,
    created_at: AT,
    text,
    valid: true,
    issues: [],
  };
}

function serverAnswers(status: number, body: unknown): ReturnType<typeof vi.fn> {
  const server = vi.fn(async () => new Response(JSON.stringify(body), { status }));
  vi.stubGlobal('fetch', server);
  return server;
}

afterEach(() => vi.unstubAllGlobals());

describe('a bench', () => {
  it('tells mistakes in the units that are switched to, and plans nothing again for them', () => {
    const { bench, requests, state, worker } = setUp({ text: DEMO, units: 'inch' });
    worker.part(planOf(DEMO).answer);
    bench.setUnits('metric');
    expect(requests).toHaveLength(1);
    expect(state().planned).toBeDefined();
    bench.setText(DEMO.replace('thickness: 32 mm', 'thickness: 90 m'));
    const [metric] = state().issues;
    bench.setUnits('inch');
    const [inch] = state().issues;
    expect(metric?.accepted).toMatch(/ mm to [\d.]+ m{1,2}$/u);
    expect(inch?.accepted).toMatch(/ in to [\d.]+ (?:in|ft)$/u);
  });

  it('plans the job it is opened with and each valid change of it', () => {
    const { bench, requests, state, worker } = setUp();
    expect(requests).toHaveLength(1);
    const { answer } = planOf(DEMO);
    worker.part(answer);
    expect(isCurrent(state())).toBe(true);
    bench.change([{ do: 'set', path: ['plate', 'thickness'], value: '1 1/4 in' }]);
    expect(state().read?.job.plate.thickness).toBeCloseTo(0.03175, 9);
    expect(requests.at(-1)).toEqual({ read: state().read });
    expect(isOutdated(state())).toBe(true);
    expect(state().planned?.answer).toBe(answer);
  });

  it('keeps the last good job and does not plan while there are mistakes', () => {
    const { bench, requests, state, worker } = setUp();
    const before = state().read;
    bench.change([{ do: 'set', path: ['plate', 'thickness'], value: '32' }]);
    expect(state().issues.map(({ path }) => path)).toEqual(['plate.thickness']);
    expect(state().read).toBe(before);
    expect(requests).toHaveLength(1);
    expect(worker.stopped).toBe(true);
    worker.part(planOf(DEMO).answer);
    expect(state().planned).toBeUndefined();
  });

  it('keeps what the form shows while the layout of the text is broken', () => {
    const { bench, state } = setUp();
    const before = state().readable;
    bench.setText(DEMO.replace('groove:', 'groove: ['));
    expect(state().issues[0]?.code).toBe('JOB_SYNTAX');
    expect(state().readable).toBe(before);
    bench.setText(`${DEMO}# more\n`);
    expect(state().readable).toBe(state().file);
  });

  it('tells of a planner that failed, for the newest change only', () => {
    const { bench, state, worker } = setUp();
    worker.reply({ is: 'failure', message: 'out of memory' });
    expect(state().plannerFailure).toBe('out of memory');
    bench.setText(`${DEMO}# more\n`);
    expect(state().plannerFailure).toBeUndefined();
  });

  it('keeps unsaved text in the browser until it is saved or given up', () => {
    const { bench, memory, state } = setUp({ text: DEMO, saved: SAVED });
    bench.setText(`${DEMO}# more\n`);
    expect(isUnsaved(state())).toBe(true);
    expect(draftOf(memory, ID)).toEqual({ text: `${DEMO}# more\n`, based_on: 3 });
    bench.discard();
    expect(state().file.text).toBe(DEMO);
    expect(draftOf(memory, ID)).toBeUndefined();
  });

  it('plans with the shop’s history, and as a shop without where that is chosen', () => {
    const trials = 'furrow_trials: 1';
    const { bench, state, requests, worker } = setUp({ text: DEMO, history: { trials, moreSince: true } });
    const { answer } = planOf(DEMO);
    const asked = (): readonly (string | undefined)[] => {
      worker.part(answer);
      return requests.map(({ knowledge }) => knowledge);
    };
    expect(asked()).toEqual([trials]);
    bench.useHistory(false);
    expect(bench.knowledge()).toBeUndefined();
    expect(asked()).toEqual([trials, undefined]);
    bench.useHistory(true);
    expect(asked()).toEqual([trials, undefined, trials]);
    bench.setTrials({ trials, moreSince: false });
    expect(asked()).toHaveLength(3);
    bench.setTrials({ trials: undefined, moreSince: false });
    expect(asked()).toEqual([trials, undefined, trials, undefined]);
    expect(state().history).toEqual({ trials: undefined, used: true, moreSince: false });
  });

  it('knows a demo job, changed or not, from a job that took its place', () => {
    const memory = new MemoryStorage();
    const { bench } = setUp({ text: DEMO, demo: true, draftName: 'new' }, memory);
    bench.setText(`${DEMO}# more\n`);
    expect(bench.isDemo()).toBe(true);
    expect(draftOf(memory, 'new')?.demo).toBe(true);
    const draft = { text: `${DEMO}# ours\n`, based_on: 0 };
    const { bench: ours } = setUp({ text: DEMO, demo: false, draftName: 'new', draft }, memory);
    expect(ours.isDemo()).toBe(false);
    ours.discard();
    expect(ours.isDemo()).toBe(true);
  });

  it('puts back the unsaved text of an earlier visit', () => {
    const draft = { text: `${DEMO}# more\n`, based_on: 2 };
    const { state } = setUp({ text: DEMO, saved: SAVED, draft });
    expect(state().restored).toBe(true);
    expect(state().file.text).toBe(draft.text);
    expect(state().revision).toBe(2);
  });

  it('saves for the first time, then as the next revision', async () => {
    const { bench, state } = setUp();
    serverAnswers(201, savedReply(DEMO, 1));
    expect(await bench.save(false)).toBe(ID);
    expect(state().saved).toEqual(savedReply(DEMO, 1));
    expect(state().revision).toBe(1);
    bench.setText(`${DEMO}# more\n`);
    const server = serverAnswers(200, savedReply(`${DEMO}# more\n`, 2));
    await bench.save(false);
    const [path, sent] = server.mock.calls[0] as unknown as [string, { method: string; body: string }];
    expect([path, sent.method]).toEqual([`/api/jobs/${ID}`, 'PUT']);
    expect(JSON.parse(sent.body)).toEqual({ text: `${DEMO}# more\n`, based_on: 1 });
    expect(state().revision).toBe(2);
    expect(isUnsaved(state())).toBe(false);
  });

  it('keeps what was typed while it was being saved', async () => {
    const { bench, memory, state } = setUp();
    serverAnswers(201, savedReply(DEMO, 1));
    const saving = bench.save(false);
    bench.setText(`${DEMO}# more\n`);
    await saving;
    expect(isUnsaved(state())).toBe(true);
    expect(draftOf(memory, ID)?.text).toBe(`${DEMO}# more\n`);
    expect(draftOf(memory, 'new')).toBeUndefined();
  });

  it('says why it was not saved and keeps the text', async () => {
    const { bench, state } = setUp({ text: DEMO, saved: SAVED });
    const newer = savedReply(`${DEMO}# theirs\n`, 4);
    serverAnswers(409, { code: 'JOB_CHANGED_MEANWHILE', message: 'It is at revision 4.', newer });
    expect(await bench.save(false)).toBeUndefined();
    expect(state().save).toEqual({ is: 'failed', why: 'It is at revision 4.' });
    expect(state().newer?.saved).toEqual(newer);
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('no connection')));
    await bench.save(false);
    expect(state().save.is).toBe('failed');
    expect(state().newer).toBeUndefined();
    expect(state().file.text).toBe(DEMO);
  });

  it('takes a save that was stored without an answer for its own, not for somebody else’s', async () => {
    const { bench, state } = setUp({ text: DEMO, saved: SAVED });
    const sent: { based_on: number }[] = [];
    const mine = `${DEMO}# first\n`;
    bench.setText(mine);
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('no connection')));
    await bench.save(false);
    bench.setText(`${mine}# second\n`);
    const next = SAVED.revision_number + 1;
    const conflict = { code: 'JOB_CHANGED_MEANWHILE', message: 'm', newer: savedReply(mine, next) };
    vi.stubGlobal('fetch', async (_path: string, request: { body: string }) => {
      sent.push(JSON.parse(request.body));
      return sent.length === 1
        ? new Response(JSON.stringify(conflict), { status: 409 })
        : new Response(JSON.stringify(savedReply(`${mine}# second\n`, next + 1)), { status: 200 });
    });
    expect(await bench.save(false)).toBe(ID);
    expect(sent.map(({ based_on }) => based_on)).toEqual([SAVED.revision_number, next]);
    expect(isUnsaved(state())).toBe(false);
  });

  it('sends a new job that was not answered again under the same identifier', async () => {
    const { bench } = setUp();
    const ids: unknown[] = [];
    vi.stubGlobal('fetch', async (_path: string, request: { body: string }) => {
      ids.push(JSON.parse(request.body).id);
      if (ids.length === 1) throw new TypeError('no connection');
      return new Response(JSON.stringify(savedReply(DEMO, 1)), { status: 201 });
    });
    await bench.save(false);
    expect(await bench.save(false)).toBe(ID);
    await bench.save(true);
    expect(ids[1]).toBe(ids[0]);
    expect(ids[2]).not.toBe(ids[0]);
  });
});
