/**
 * Reading a log of 1e6 rows by 6 columns from disk into numbers, as ratios within one run: against uDSV with types,
 * csv-parse as a stream with casts, and DuckDB reading the same columns; then how far memory grows from 1e6 to 1e7 rows.
 */
import { createReadStream, mkdtempSync, openSync, readFileSync, readSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { LogReader, TableReader } from '@furrow/engine';
import { parse } from 'csv-parse';
import { inferSchema, initParser } from 'udsv';
import { machineLine } from './timing.ts';

const ROWS = 1_000_000;
const RUNS = 5;
const folder = mkdtempSync(join(tmpdir(), 'furrow-reader-'));

/** A log without randomness, its numbers as long as loggers write them. */
function writeLog(path: string, rows: number): void {
  const file = openSync(path, 'w');
  let text = 'time_s,voltage_V,current_A,travel_mm_per_min,position_mm,air_pressure_kPa\n';
  for (let row = 0; row < rows; row += 1) {
    const [u, i, v, p] = [
      41 + ((row * 37) % 101) / 100,
      850 + ((row * 53) % 201) / 10,
      700 + ((row * 29) % 51) / 10,
      550 + ((row * 17) % 100) / 100,
    ];
    text += `${(row / 1000).toFixed(3)},${u.toFixed(2)},${i.toFixed(1)},${v.toFixed(1)},${(row * 0.0118).toFixed(3)},${p.toFixed(2)}\n`;
    if (text.length > 1 << 20) {
      writeSync(file, text);
      text = '';
    }
  }
  writeSync(file, text);
}

interface Pieces {
  push(bytes: Uint8Array): readonly { readonly row: Float64Array }[];
  end(): {
    readonly ok: boolean;
    readonly value?: { readonly batches: readonly { readonly row: Float64Array }[] };
  };
}

function readPieces(path: string, reader: Pieces): number {
  const file = openSync(path, 'r');
  const buffer = Buffer.allocUnsafe(1 << 18);
  let rows = 0;
  for (let count = readSync(file, buffer); count > 0; count = readSync(file, buffer)) {
    for (const { row } of reader.push(buffer.subarray(0, count))) rows += row.length;
  }
  for (const { row } of reader.end().value?.batches ?? []) rows += row.length;
  return rows;
}

/** Median CPU of the calls, both of a process that works alone [s]. */
async function cpuOf(runs: number, run: () => Promise<number> | number): Promise<number> {
  const times: number[] = [];
  for (let at = 0; at <= runs; at += 1) {
    const before = process.cpuUsage();
    if ((await run()) !== ROWS) throw new Error('rows are missing');
    const { user, system } = process.cpuUsage(before);
    if (at > 0) times.push((user + system) / 1e6);
  }
  return times.sort((a, b) => a - b)[Math.floor(times.length / 2)]!;
}

try {
  const path = join(folder, 'log.csv');
  writeLog(path, ROWS);
  const long = join(folder, 'long.csv');
  writeLog(long, 10 * ROWS);
  readPieces(path, new LogReader());
  const once = process.resourceUsage().maxRSS / 1000;
  readPieces(long, new LogReader());
  const tenfold = process.resourceUsage().maxRSS / 1000;
  rmSync(long);

  const table = await cpuOf(RUNS, () => readPieces(path, new TableReader()));
  const log = await cpuOf(RUNS, () => readPieces(path, new LogReader()));
  const udsv = await cpuOf(RUNS, () => {
    const text = readFileSync(path, 'utf8');
    return initParser(inferSchema(text)).typedCols(text)[0]!.length;
  });
  const csvParse = await cpuOf(
    1,
    () =>
      new Promise<number>((settle, fail) => {
        const columns = Array.from({ length: 6 }, () => new Float64Array(ROWS));
        let rows = 0;
        const parser = createReadStream(path).pipe(parse({ from_line: 2 }));
        parser.on('readable', () => {
          for (let record = parser.read(); record !== null; record = parser.read()) {
            for (let at = 0; at < 6; at += 1) columns[at]![rows] = Number(record[at]);
            rows += 1;
          }
        });
        parser.on('end', () => settle(rows));
        parser.on('error', fail);
      }),
  );
  const connection = await (await DuckDBInstance.create(':memory:', { threads: '1' })).connect();
  const duck = await cpuOf(RUNS, async () => {
    const result = await connection.runAndReadAll(
      `select count(*), sum(voltage_V), sum(current_A), sum(travel_mm_per_min), sum(position_mm), sum(air_pressure_kPa), max(time_s) from read_csv('${path}')`,
    );
    return Number(result.getRows()[0]![0]);
  });
  const ratio = (other: number): string => `x${(other / table).toFixed(2)} of the reader's`;
  console.log(machineLine());
  console.log(`reader ${table.toFixed(3)} s CPU for 1e6 rows x 6; with the clock mended ${log.toFixed(3)} s`);
  console.log(`uDSV ${udsv.toFixed(3)} s, ${ratio(udsv)} (aim: 2)`);
  console.log(`csv-parse ${csvParse.toFixed(3)} s, ${ratio(csvParse)} (aim: 5)`);
  console.log(`DuckDB, one thread, sums alone ${duck.toFixed(3)} s, ${ratio(duck)}`);

  console.log(`memory at most ${once.toFixed(0)} MB after 1e6 rows, ${tenfold.toFixed(0)} MB after 1e7`);
} finally {
  rmSync(folder, { recursive: true });
}
