/**
 * Live runs on one server: how long a reading takes from its arrival to whoever listens, what is lost, and what it costs.
 * Another load by arguments: rigs, frames per second and rig, readings per frame, seconds. All of them together are
 * `200 1 100 600`.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { API_PATHS, fillPath } from '../packages/contract/src/index.ts';

const [RIGS = 10, RATE = 10, READINGS = 10, SECONDS = 15] = process.argv.slice(2).map(Number);
/** Rigs that somebody listens to. */
const HEARD = Math.min(RIGS, 5);
const TICKS_PER_SECOND = 100;
const root = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));

const folder = mkdtempSync(join(tmpdir(), 'furrow-live-bench-'));
const flags = ['--conditions=furrow-source', '--import', 'tsx', root('packages/server/src/testing/serve.ts')];
const server = spawn(process.execPath, [...flags, folder, root('examples')], {
  stdio: ['ignore', 'pipe', 'inherit'],
});
const url = await new Promise<string>((found) => {
  server.stdout.on('data', (text: Buffer) => found(String(text).trim()));
});

/** Time that the server has spent on the processors [s]; NaN where the system does not tell. */
function cpu(): number {
  try {
    const fields = readFileSync(`/proc/${server.pid}/stat`, 'utf8').split(') ')[1]!.split(' ');
    return (Number(fields[11]) + Number(fields[12])) / TICKS_PER_SECOND;
  } catch {
    return Number.NaN;
  }
}

async function post(path: string, body: object): Promise<{ id: string }> {
  const reply = await fetch(url + path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!reply.ok) throw new Error(await reply.text());
  return (await reply.json()) as { id: string };
}

const text = readFileSync(root('examples/penstock-seam.yaml'), 'utf8');
const job = await post(API_PATHS.jobs, { text });
const ids = Array.from({ length: RIGS }, () => crypto.randomUUID());
for (const id of ids)
  await post(fillPath(API_PATHS.jobLive, { id: job.id }), {
    id,
    name: 'rig',
    revision_number: 1,
    source: { kind: 'http' },
  });

const delays: number[] = [];
let heard = 0;
const stop = new AbortController();
const listen = async (id: string): Promise<void> => {
  const reply = await fetch(url + fillPath(API_PATHS.runEvents, { id }), { signal: stop.signal });
  let held = '';
  for await (const piece of reply.body!) {
    const now = Date.now();
    held += Buffer.from(piece).toString('utf8');
    const lines = held.split('\n');
    held = lines.pop() ?? '';
    for (const line of lines) {
      const at = /^data: \{"arrived_at":"([^"]+)"/u.exec(line)?.[1];
      if (at === undefined) continue;
      heard += 1;
      delays.push(now - Date.parse(at));
    }
  }
};
const listening = ids.slice(0, HEARD).map((id) => listen(id).catch(() => undefined));

const channel = (around: number): number[] =>
  Array.from({ length: READINGS }, (_, i) => Math.round(100 * (around + Math.sin(i))) / 100);
let sent = 0;
let acknowledged = 0;
const send = async (id: string): Promise<void> => {
  sent += 1;
  const frame = {
    'time [s]': channel(performance.now() / 1000),
    'arc voltage [V]': channel(42),
    'current [A]': channel(950),
    'travel [mm/min]': channel(600),
    'feed [mm/min]': channel(115),
    'air pressure [kPa]': channel(600),
  };
  const reply = await fetch(url + fillPath(API_PATHS.runFrames, { id }), {
    method: 'POST',
    headers: { 'content-type': 'application/x-ndjson' },
    body: `${JSON.stringify(frame)}\n`,
  });
  acknowledged += ((await reply.json()) as { kept: number }).kept;
};

const before = cpu();
const began = performance.now();
// each rig keeps its own pace and sends its next frame when the last is acknowledged
await Promise.all(
  ids.map(async (id, rig) => {
    for (let n = 0; n < SECONDS * RATE; n += 1) {
      const due = began + (1000 * (n + rig / RIGS)) / RATE;
      await new Promise((done) => setTimeout(done, Math.max(0, due - performance.now())));
      await send(id);
    }
  }),
);
const took = (performance.now() - began) / 1000;
const spent = cpu() - before;
while (heard < HEARD * SECONDS * RATE) await new Promise((done) => setTimeout(done, 20));
stop.abort();
await Promise.all(listening);
const kept = ids.reduce(
  (sum, id) =>
    sum +
    readFileSync(join(folder, 'runs', 'live', `${id}.jsonl`), 'utf8')
      .trim()
      .split('\n').length,
  0,
);
const ended = new Promise((done) => server.on('close', done));
server.kill('SIGTERM');
await ended;
rmSync(folder, { recursive: true, force: true });

delays.sort((a, b) => a - b);
const at = (share: number): number => delays[Math.min(delays.length - 1, Math.floor(share * delays.length))]!;
const readings = kept * READINGS;
console.log(`${RIGS} rigs, ${RATE} frames/s of ${READINGS} x 6 readings each, for ${took.toFixed(1)} s`);
console.log(
  `lost: ${acknowledged - kept} of ${acknowledged} frames acknowledged (${sent} sent, ${kept} on disk)`,
);
console.log(`arrival to listener: median ${at(0.5)} ms, 95 % within ${at(0.95)} ms, most ${at(1)} ms`);
console.log(
  `server: ${spent.toFixed(2)} s of processor for ${readings} readings x 6: ${((100 * spent) / took).toFixed(0)} % of one core, ${((spent / took / RIGS) * 3600).toFixed(0)} s per rig-hour`,
);
