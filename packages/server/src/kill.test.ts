import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { API_PATHS, type Commissioning, fillPath, type SavedJob, type SavedShopFile } from '@furrow/contract';
import { afterAll, describe, expect, it } from 'vitest';
import { EXAMPLES } from './testing/test-server.ts';

const KILLS = 3;
const SERVE = fileURLToPath(new URL('./testing/serve.ts', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'furrow-serve-'));
const programs: ChildProcess[] = [];
afterAll(() => {
  for (const program of programs) program.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

function serve(): Promise<{ readonly program: ChildProcess; readonly url: string }> {
  const program = spawn(
    process.execPath,
    ['--conditions=furrow-source', '--import', 'tsx', SERVE, folder, EXAMPLES],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  );
  programs.push(program);
  let complaint = '';
  program.stderr.on('data', (chunk: Buffer) => {
    complaint += chunk.toString();
  });
  return new Promise((resolve, reject) => {
    program.on('exit', () => reject(new Error(`the server ended by itself: ${complaint}`)));
    createInterface({ input: program.stdout }).once('line', (url) => resolve({ program, url }));
  });
}

async function send<T>(method: string, url: string, body: unknown): Promise<T> {
  const reply = await fetch(url, {
    method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!reply.ok) throw new Error(`${method} ${url} was answered with ${reply.status}`);
  return (await reply.json()) as T;
}

/** What the server has acknowledged. */
interface Acknowledged {
  readonly jobs: SavedJob[];
  readonly readings: Commissioning[];
  readonly kits: SavedShopFile[];
}

/** Saves again and again until the server is gone; it is killed while the save after `saves` others is under way. */
async function saveUntilKilled(saves: number, label: string): Promise<Acknowledged> {
  const { program, url } = await serve();
  const gone = new Promise((resolve) => program.on('exit', resolve));
  const acknowledged: Acknowledged = { jobs: [], readings: [], kits: [] };
  const { jobs, readings, kits } = acknowledged;
  try {
    const kit = await fetch(url + API_PATHS.kit);
    let kitNumber = ((await kit.json()) as SavedShopFile).revision_number;
    let job = await send<SavedJob>('POST', url + API_PATHS.jobs, { text: `title: ${label}\n` });
    for (;;) {
      jobs.push(job);
      const rig = url + fillPath(API_PATHS.jobCommissioning, { id: job.id });
      const ticks = jobs.map((_, row) => `row-${row}`);
      const entry = { readings: {}, ticks, findings: [] };
      readings.push(await send('PUT', rig, { ...entry, based_on: readings.length }));
      const text = `title: ${label}\n# save ${jobs.length}\n`;
      kits.push(await send('PUT', url + API_PATHS.kit, { text, based_on: kitNumber++ }));
      const saving = send<SavedJob>('PUT', url + fillPath(API_PATHS.job, { id: job.id }), {
        text,
        based_on: job.revision_number,
      });
      if (jobs.length === saves) program.kill('SIGKILL');
      job = await saving;
    }
  } catch (error) {
    // What `fetch` throws when nobody is left to answer; anything else is no part of the plan.
    if (!(error instanceof TypeError)) throw error;
  }
  await gone;
  return acknowledged;
}

describe('a server killed while jobs are saved through it', () => {
  it(`has lost nothing that it acknowledged (${KILLS} kills)`, { timeout: 60_000 }, async () => {
    const all: Acknowledged[] = [];
    for (let kill = 0; kill < KILLS; kill++) all.push(await saveUntilKilled(5 + 7 * kill, `kill ${kill}`));
    const jobs = all.flatMap((acknowledged) => acknowledged.jobs);
    expect(jobs.length).toBeGreaterThanOrEqual(5 + 12 + 19);
    const { url } = await serve();
    const open = async (path: string): Promise<unknown> => (await fetch(url + path)).json();
    for (const { id, revision_number, text } of jobs) {
      const path = fillPath(API_PATHS.jobRevision, { id, number: revision_number });
      expect(await open(path)).toMatchObject({ id, revision_number, text });
    }
    for (const { revision_number, text } of all.flatMap(({ kits }) => kits)) {
      const path = fillPath(API_PATHS.kitRevision, { number: revision_number });
      expect(await open(path)).toMatchObject({ revision_number, text });
    }
    for (const { readings } of all) {
      const last = readings.at(-1);
      const kept = await open(fillPath(API_PATHS.jobCommissioning, { id: last?.job_id ?? '' }));
      // One more may have been saved and the server killed before it could say so.
      expect((kept as Commissioning).ticks).toMatchObject(last?.ticks ?? {});
    }
  });
});
