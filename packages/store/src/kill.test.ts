import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import Libsql from 'libsql';
import { afterAll, describe, expect, it } from 'vitest';
import { openStore } from './open-store.ts';
import { countingSources } from './testing/sources.ts';

const KILLS = Number(process.env['FURROW_KILLS'] ?? 8);
const CHILD = fileURLToPath(new URL('./testing/save-loop.ts', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'furrow-kill-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Numbers that only look random: the same on each run (linear congruence of Lehmer). */
function draws(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
}

/** Lets the program save and kills it, without warning, a moment after it has acknowledged so many saves. */
function killAfter(saves: number, microseconds: number, label: string): Promise<string[]> {
  const child = spawn(
    process.execPath,
    ['--conditions=furrow-source', '--import', 'tsx', CHILD, folder, label],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  );
  const acknowledged: string[] = [];
  let complaint = '';
  child.stderr.on('data', (chunk: Buffer) => {
    complaint += chunk.toString();
  });
  createInterface({ input: child.stdout }).on('line', (line) => {
    acknowledged.push(line);
    if (acknowledged.length !== saves) return;
    const until = process.hrtime.bigint() + BigInt(microseconds) * 1000n;
    while (process.hrtime.bigint() < until);
    child.kill('SIGKILL');
  });
  return new Promise((resolve, reject) => {
    child.on('close', (_code, signal) => {
      if (signal === 'SIGKILL') resolve(acknowledged);
      else reject(new Error(`the saving program ended by itself: ${complaint}`));
    });
  });
}

function hashOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

async function expectSaved(lines: readonly string[]): Promise<void> {
  const store = await openStore({ folder }, countingSources());
  const faults = new Map((await store.faultCases.list()).map(({ id, cause }) => [id, cause]));
  for (const line of lines) {
    const [kind = '', id = '', number, mark] = line.split(' ');
    if (kind === 'fault') expect(faults.get(id), line).toBe(mark);
    else if (kind === 'readings') expect(readingMark(id, Number(number)), line).toBe(mark);
    else {
      const revision =
        kind === 'kit' ? await store.kit.revision(Number(number)) : await store.revision(id, Number(number));
      expect(revision?.revision, line).toBe(mark);
      expect(hashOf(revision?.text ?? ''), line).toBe(mark);
    }
  }
  await store.close();
}

/** Earlier readings have no way out of the store but the newest, so they are looked at in the file. */
function readingMark(jobId: string, number: number): unknown {
  const file = new Libsql(join(folder, 'furrow.sqlite'), { readonly: true });
  const row = file
    .prepare("select content from document_revision where kind = 'rig' and id = ? and number = ?")
    .get(jobId, number) as { readonly content: string } | undefined;
  file.close();
  const content = JSON.parse(row?.content ?? '{}') as { readings?: { check?: { text: string } } };
  return content.readings?.check?.text;
}

describe('a program killed while it saves', () => {
  it(`loses nothing that was acknowledged (${KILLS} kills)`, { timeout: 5000 + KILLS * 5000 }, async () => {
    const draw = draws(20_260_105);
    const acknowledged: string[] = [];
    for (let kill = 0; kill < KILLS; kill++) {
      const fresh = await killAfter(1 + draw(40), draw(4000), `kill ${kill}`);
      acknowledged.push(...fresh);

      const file = new Libsql(join(folder, 'furrow.sqlite'));
      expect(file.prepare('pragma integrity_check').raw().all()).toEqual([['ok']]);
      expect(file.prepare('pragma foreign_key_check').raw().all()).toEqual([]);
      // Half-saved would be: a document whose revisions are not exactly 1, 2, ... up to its newest.
      const torn = file.prepare(
        `select d.kind, d.id from document d
         left join document_revision r on r.shop = d.shop and r.kind = d.kind and r.id = d.id
         group by d.shop, d.kind, d.id, d.latest
         having count(r.number) <> d.latest or max(r.number) <> d.latest or min(r.number) <> 1`,
      );
      expect(torn.raw().all()).toEqual([]);
      file.close();

      // The earlier saves are all looked at again after the last kill.
      await expectSaved(kill === KILLS - 1 ? acknowledged : fresh);
    }
    expect(acknowledged.length).toBeGreaterThanOrEqual(KILLS);
    const kinds = new Set(acknowledged.map((line) => line.split(' ')[0]));
    expect([...kinds].sort()).toEqual(['fault', 'job', 'kit', 'readings']);
  });
});
