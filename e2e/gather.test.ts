import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, it } from 'vitest';
import { runFurrow } from './run-furrow.ts';

const PROGRAM = fileURLToPath(new URL('../packages/cli/bin/furrow.js', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'furrow-gather-'));
afterAll(() => rmSync(folder, { recursive: true }));

it('what any program writes is kept byte for byte, behind what was there', async () => {
  const file = join(folder, 'input.csv');
  const input = Buffer.from('t [s],U [V]\r\n0,41\r\n\xff\x00x', 'latin1');
  const { code, out } = await runFurrow(['gather', '-', '-o', file, '--json'], { input });
  expect(code).toBe(0);
  expect(JSON.parse(out)).toEqual({ file, bytes: input.length });
  expect(readFileSync(file)).toEqual(input);
  writeFileSync(file, 'first\n');
  await runFurrow(['gather', '-', '-o', file], { input: 'second\n' });
  expect(readFileSync(file, 'utf8')).toBe('first\nsecond\n');
});

it.each([
  [['gather', 'ftp://x', '-o', join(folder, 'x')], 'is no source of readings'],
  [['gather', 'mqtt://127.0.0.1', '-o', join(folder, 'x')], '--topic'],
  [['gather', 'mqtt://127.0.0.1', '--topic', 'rig/#', '-o', join(folder, 'x')], 'without + and #'],
  [['gather', 'http://example.test:4000', '-o', join(folder, 'x')], 'this computer alone'],
  [['gather', '-', '-o', join(folder, 'none', 'x')], 'cannot be written'],
])('%j is refused', async (args, why) => {
  const { code, out, err } = await runFurrow(args, { input: '' });
  expect([code, out]).toEqual([2, '']);
  expect(err).toContain(why);
});

it('a program killed while readings come has every one on disk that it acknowledged', async () => {
  const file = join(folder, 'killed.jsonl');
  const child = spawn(process.execPath, [PROGRAM, 'gather', 'http://127.0.0.1:0', '-o', file]);
  const address = await new Promise<string>((found) => {
    child.stderr.on('data', (text: Buffer) => {
      const place = /http:\S+\//u.exec(String(text))?.[0];
      if (place) found(place);
    });
  });
  const acknowledged: number[] = [];
  const ended = new Promise<void>((done) => child.on('close', () => done()));
  for (let n = 0; n < 1000 && child.exitCode === null && child.signalCode === null; n += 1) {
    const sent = fetch(address, {
      method: 'POST',
      body: `{"t":${n},"U":41}\n`,
      headers: { 'content-type': 'application/x-ndjson' },
    });
    if (n === 60) child.kill('SIGKILL');
    const answer = await sent.then(
      (response) => response.json(),
      () => undefined,
    );
    if (answer?.kept === 1) acknowledged.push(n);
  }
  await ended;
  const kept = readFileSync(file, 'utf8')
    .split('\n')
    .filter((line) => line.endsWith('}'))
    .map((line) => JSON.parse(line).t);
  expect(acknowledged.length).toBeGreaterThan(50);
  expect(kept).toEqual(expect.arrayContaining(acknowledged));
});
