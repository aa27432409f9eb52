/**
 * Reviewing a log of 1e6 rows by 6 columns from disk (reading, events, places, depth), as a ratio within one run against
 * DuckDB reading the same file and finding the same arc-outs by SQL; the review alone; how far memory grows with the log.
 */
import { mkdtempSync, openSync, readFileSync, readSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { answerJob, answerRun, LogReader, readJob, reviewRun } from '@furrow/engine';
import { machineLine } from './timing.ts';

const ROWS = 1_000_000;
const RUNS = 3;
/** The arc is out for 900 rows every 100 000, at 1000 rows per second. */
const OUT_EVERY = 100_000;
const OUT_ROWS = 900;
const folder = mkdtempSync(join(tmpdir(), 'furrow-run-'));

function writeLog(path: string, rows: number): void {
  const file = openSync(path, 'w');
  let text = 'time_s,voltage_V,current_A,travel_mm_per_min,position_mm,air_pressure_kPa\n';
  for (let row = 0; row < rows; row += 1) {
    const out = row % OUT_EVERY > OUT_EVERY - OUT_ROWS;
    const volts = out ? 75 : 41 + ((row * 37) % 101) / 100;
    const amps = out ? 0 : 765 + ((row * 53) % 201) / 10;
    const [v, p] = [340 + ((row * 29) % 51) / 10, 550 + ((row * 17) % 100) / 100];
    text += `${(row / 1000).toFixed(3)},${volts.toFixed(2)},${amps.toFixed(1)},${v.toFixed(1)},${(row * 0.00598).toFixed(3)},${p.toFixed(2)}\n`;
    if (text.length > 1 << 20) {
      writeSync(file, text);
      text = '';
    }
  }
  writeSync(file, text);
}

const read = readJob(readFileSync(new URL('../examples/penstock-seam.yaml', import.meta.url), 'utf8'));
if (!read.ok) throw new Error('the example cannot be read');
const job = { read: read.value, answer: answerJob({ job: read.value, version: '0' }) };

function pieces(path: string, take: (bytes: Uint8Array) => void): void {
  const file = openSync(path, 'r');
  const buffer = Buffer.allocUnsafe(1 << 18);
  for (let count = readSync(file, buffer); count > 0; count = readSync(file, buffer))
    take(buffer.subarray(0, count));
}

/** Reviews a log as the program does; the arc-outs that it found. */
function review(path: string): number {
  const run = answerRun({ version: '0', job });
  pieces(path, run.push);
  const end = run.end('');
  if (!end.ok) throw new Error(end.issues[0]?.message);
  return end.value.report.events.filter(({ kind }) => kind === 'arc_out').length;
}

async function cpuOf(what: string, run: () => Promise<number> | number): Promise<number> {
  const times: number[] = [];
  for (let at = 0; at <= RUNS; at += 1) {
    const before = process.cpuUsage();
    const found = await run();
    const { user, system } = process.cpuUsage(before);
    if (found !== ROWS / OUT_EVERY - 1) throw new Error(`${what} found ${found} arc-outs`);
    if (at > 0) times.push((user + system) / 1e6);
  }
  return times.sort((a, b) => a - b)[Math.floor(times.length / 2)]!;
}

const SQL = (path: string): string => `
  with rows as (select time_s, current_A >= 400 as burns, row_number() over () as n from read_csv('${path}')),
  runs as (select *, n - row_number() over (partition by burns order by n) as run from rows)
  select min(time_s), max(time_s) from runs where not burns group by run
  having max(time_s) - min(time_s) >= 0.4 and max(n) < ${ROWS}`;

try {
  const path = join(folder, 'log.csv');
  writeLog(path, ROWS);
  review(path);
  const once = process.resourceUsage().maxRSS / 1000;
  const long = join(folder, 'long.csv');
  writeLog(long, 10 * ROWS);
  review(long);
  const tenfold = process.resourceUsage().maxRSS / 1000;
  rmSync(long);

  const whole = await cpuOf('the review', () => review(path));
  const reader = new LogReader();
  const batches: ReturnType<LogReader['push']>[number][] = [];
  pieces(path, (bytes) => batches.push(...reader.push(bytes)));
  const alone = await cpuOf('the review of rows', () => {
    const machine = reviewRun();
    for (const batch of batches) machine.push(batch);
    return machine.end().events.filter(({ kind }) => kind === 'arc_out').length;
  });
  const duckdb = await DuckDBInstance.create();
  const connection = await duckdb.connect();
  const sql = await cpuOf('SQL', async () => (await connection.runAndReadAll(SQL(path))).currentRowCount);
  const speed = (seconds: number): string => `${(ROWS / seconds / 1e6).toFixed(2)} million rows/s of CPU`;
  console.log(machineLine());
  console.log(`review from the file, with depth: ${speed(whole)}`);
  console.log(`review of rows already read: ${speed(alone)}`);
  console.log(
    `DuckDB, reading and arc-outs by SQL: ${speed(sql)}; review / DuckDB ${(sql / whole).toFixed(2)}`,
  );
  console.log(`memory at most: ${once.toFixed(0)} MB for 1e6 rows, ${tenfold.toFixed(0)} MB for 1e7`);
} finally {
  rmSync(folder, { recursive: true });
}
