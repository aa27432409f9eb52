/**
 * Reviewing a log of 1e6 rows by 6 columns from disk (reading, events, places, depth), as a ratio within one run against
 * DuckDB reading the same file and doing what SQL can of the same work; the review alone; how far memory grows with the
 * log. CPU time is compared, DuckDB on one thread: a review keeps one core busy, and a share of the machine is what a log costs.
 */
import { mkdtempSync, openSync, readFileSync, readSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { answerJob, answerRun, LogReader, readJob, reviewRun } from '@furrow/engine';
import { machineLine } from './timing.ts';

const ROWS = 1_000_000;
const RUNS = 5;
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

/** Reviews a log as the program does while it grows, or as one that is over; the arc-outs that it found. */
function review(path: string, live = true): number {
  const run = answerRun({ version: '0', job, live });
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

/** Arc-outs alone: of six columns DuckDB then reads two and passes over the rest, which is less than a review does. */
const ARC_OUTS = (path: string): string => `
  with rows as (select time_s, current_A >= 400 as burns, row_number() over () as n from read_csv('${path}')),
  runs as (select *, n - row_number() over (partition by burns order by n) as run from rows)
  select min(time_s), max(time_s) from runs where not burns group by run
  having max(time_s) - min(time_s) >= 0.4 and max(n) < ${ROWS}`;

/** The same from all six columns, as a log is read: their sums keep DuckDB from passing over any. */
const ARC_OUTS_OF_SIX = (path: string): string => `
  with rows as (select *, current_A >= 400 as burns, row_number() over () as n from read_csv('${path}')),
  runs as (select *, n - row_number() over (partition by burns order by n) as run from rows)
  select min(time_s), max(time_s), sum(voltage_V), sum(travel_mm_per_min), sum(position_mm), sum(air_pressure_kPa)
  from runs where not burns group by run having max(time_s) - min(time_s) >= 0.4 and max(n) < ${ROWS}`;

/**
 * What of a review SQL can say, from all six columns: arc-outs with their places, energy and charge by the trapezoid rule,
 * means over the arc, gaps, standing carriage, low air, frozen readings. Set points found in the log, hysteresis, spikes,
 * drift, slip, starts, passes and depth are ours on top.
 */
const SAME_WORK = (path: string): string => `
  with rows as (select *, row_number() over () as n from read_csv('${path}')),
  marked as (select *, current_A >= 400 as burns, time_s - lag(time_s) over w as dt,
    (voltage_V * current_A + lag(voltage_V * current_A) over w) / 2 as watts,
    (current_A + lag(current_A) over w) / 2 as amps, position_mm - lag(position_mm) over w as way,
    voltage_V = lag(voltage_V) over w as stale from rows window w as (order by n)),
  sums as (select sum(watts * dt) filter (burns) as energy, sum(amps * dt) filter (burns) as charge,
    avg(voltage_V) filter (burns) as volts, avg(current_A) filter (burns) as mean, sum(way) filter (burns) as gouged,
    count(*) filter (dt > 0.2) as gaps, count(*) filter (burns and travel_mm_per_min < 70) as stands,
    count(*) filter (burns and air_pressure_kPa < 470) as low, count(*) filter (stale) as stale from marked),
  runs as (select *, n - row_number() over (partition by burns order by n) as run from marked)
  select min(time_s), max(time_s), min(position_mm), max(position_mm), any_value(sums) from runs, sums
  where not burns group by run having max(time_s) - min(time_s) >= 0.4 and max(n) < ${ROWS}`;

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
  // planning the passes that remain takes as long for a short log: it is told apart
  const over = await cpuOf('the review with the rest planned', () => review(path, false));
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
  // a review keeps one core busy: more threads would only add what it costs to share the work out
  await connection.run('set threads = 1');
  const bySql = (text: string) => async (): Promise<number> =>
    (await connection.runAndReadAll(text)).currentRowCount;
  const same = await cpuOf('SQL', bySql(SAME_WORK(path)));
  const ofSix = await cpuOf('SQL', bySql(ARC_OUTS_OF_SIX(path)));
  const arcOuts = await cpuOf('SQL', bySql(ARC_OUTS(path)));
  const speed = (seconds: number): string => `${(ROWS / seconds / 1e6).toFixed(2)} million rows/s of CPU`;
  console.log(machineLine());
  console.log(`review from the file, with depth: ${speed(whole)}`);
  console.log(`planning the passes that remain, once per log: ${(over - whole).toFixed(2)} s of CPU`);
  console.log(`review of rows already read: ${speed(alone)}`);
  const against = (seconds: number): string =>
    `${speed(seconds)}; review / DuckDB ${(seconds / whole).toFixed(2)}`;
  console.log(`DuckDB, one thread, the same work by SQL as far as it goes: ${against(same)}`);
  console.log(`DuckDB, one thread, arc-outs alone, all six columns read: ${against(ofSix)}`);
  console.log(`DuckDB, one thread, arc-outs alone, four of six columns not read: ${against(arcOuts)}`);
  console.log(`memory at most: ${once.toFixed(0)} MB for 1e6 rows, ${tenfold.toFixed(0)} MB for 1e7`);
} finally {
  rmSync(folder, { recursive: true });
}
