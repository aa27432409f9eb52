import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openJournal, StoreFailure } from '@furrow/store';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { LiveRun } from './live-runs.ts';
import { runEvents } from './run-events.ts';

let folder: string;
let live: LiveRun;
let moment = 0;
const now = (): Date => new Date(moment);

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'furrow-events-'));
  live = new LiveRun('run', await openJournal(join(folder, 'run.jsonl')), now);
});
afterEach(async () => {
  await live.close();
  rmSync(folder, { recursive: true });
});

async function send(n: number): Promise<void> {
  await live.take(
    (async function* () {
      yield Buffer.from(`{"t":${n}}\n`);
    })(),
  );
}

/** Listens while the clock moves on three seconds with each reading; what came before the stream ended by itself. */
async function heard(mayStill: () => Promise<boolean>, readings: number): Promise<string> {
  let text = '';
  let sent = 0;
  await send(0);
  for await (const event of runEvents(live, { from: 0, mayStill, now })) {
    text += event;
    if (!event.startsWith('id:')) continue;
    sent += 1;
    if (sent === readings) break;
    moment += 3000;
    await send(sent);
  }
  return text;
}

it('a stream ends with the right to listen, within seconds, and not as if the run were over', async () => {
  let may = true;
  let asked = 0;
  const text = await heard(async () => {
    asked += 1;
    const held = may;
    may = false;
    return held;
  }, 20);
  // asked after 6 s, when they might, and after 12 s, when they might no longer
  expect(asked).toBe(2);
  expect(text.match(/^id:/gmu)).toHaveLength(4);
  expect(text).not.toContain('event: end');
});

it('a stream goes on while nobody can say whether its listener still may', async () => {
  const text = await heard(
    () => Promise.reject(new StoreFailure('STORE_UNAVAILABLE', 'The database is away.')),
    8,
  );
  expect(text.match(/^id:/gmu)).toHaveLength(8);
});
