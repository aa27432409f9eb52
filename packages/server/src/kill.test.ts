import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { API_PATHS, fillPath, type SavedJob, type SavedRevision } from '@furrow/contract';
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

/** Saves again and again until the server is gone; it is killed while the save after `saves` others is under way. */
async function saveUntilKilled(saves: number, label: string): Promise<SavedJob[]> {
  const { program, url } = await serve();
  const gone = new Promise((resolve) => program.on('exit', resolve));
  const acknowledged: SavedJob[] = [];
  try {
    let job = await send<SavedJob>('POST', url + API_PATHS.jobs, { text: `title: ${label}\n` });
    for (;;) {
      acknowledged.push(job);
      const text = `title: ${label}\n# save ${acknowledged.length}\n`;
      const saving = send<SavedJob>('PUT', url + fillPath(API_PATHS.job, { id: job.id }), {
        text,
        based_on: job.revision_number,
      });
      if (acknowledged.length === saves) program.kill('SIGKILL');
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
    const acknowledged: SavedJob[] = [];
    for (let kill = 0; kill < KILLS; kill++) {
      acknowledged.push(...(await saveUntilKilled(5 + 7 * kill, `kill ${kill}`)));
    }
    expect(acknowledged.length).toBeGreaterThanOrEqual(5 + 12 + 19);
    const { url } = await serve();
    for (const { id, revision_number: number, text } of acknowledged) {
      const reply = await fetch(url + fillPath(API_PATHS.jobRevision, { id, number }));
      expect(await reply.json()).toMatchObject({
        id,
        revision_number: number,
        text,
      } as Partial<SavedRevision>);
    }
  });
});
