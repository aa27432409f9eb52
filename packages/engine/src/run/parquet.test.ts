import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { expect, it } from 'vitest';
import { type LogBatch, LogParquetWriter, LogReader, readParquetLog } from './index.ts';

const ROWS = 70_000;

function written(): { bytes: Buffer; batches: LogBatch[] } {
  const lines = Array.from(
    { length: ROWS },
    (_, row) => `${row / 100},${40 + (row % 7) / 10},${row % 5 === 0 ? '' : 850 + (row % 3)}`,
  );
  const reader = new LogReader();
  const batches = [...reader.push(Buffer.from(`time_s,voltage_V,current_A\n${lines.join('\n')}\n`))];
  const outcome = reader.end();
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  batches.push(...outcome.value.batches);
  const writer = new LogParquetWriter();
  const pieces = batches.map((batch) => writer.push(batch));
  pieces.push(writer.end());
  return { bytes: Buffer.concat(pieces), batches };
}

const joined = (batches: readonly LogBatch[], of: (batch: LogBatch) => Float64Array): number[] =>
  batches.flatMap((batch) => [...of(batch)]);

it('a log kept as Parquet reads back the same, and as such by another program', async () => {
  const { bytes, batches } = written();
  const back: LogBatch[] = [];
  const buffer = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer;
  const end = await readParquetLog(buffer, (batch) => back.push(batch));
  if (!end.ok) throw new Error(end.issues[0]!.message);
  expect(end.value).toMatchObject({ rowsRead: ROWS, rejectedCount: 0, reading: { format: 'parquet' } });
  for (const of of [
    (b: LogBatch) => b.time_s,
    (b: LogBatch) => b.row,
    (b: LogBatch) => b.channels.voltage_V!,
    (b: LogBatch) => b.channels.current_A!,
  ]) {
    expect(joined(back, of)).toEqual(joined(batches, of));
  }

  const folder = mkdtempSync(join(tmpdir(), 'furrow-parquet-'));
  try {
    const file = join(folder, 'log.parquet');
    writeFileSync(file, bytes);
    const connection = await (await DuckDBInstance.create(':memory:', { threads: '1' })).connect();
    const result = await connection.runAndReadAll(
      `select count(*)::double, max(time_s), sum(voltage_V), sum(case when isnan(current_A) then 0 else current_A end), count(*) filter (where isnan(current_A))::double from '${file}'`,
    );
    const [count, last, volts, amps, empty] = result.getRows()[0]!.map(Number);
    const current = joined(batches, (b) => b.channels.current_A!);
    expect([count, last, empty]).toEqual([ROWS, (ROWS - 1) / 100, ROWS / 5]);
    expect(volts).toBeCloseTo(
      joined(batches, (b) => b.channels.voltage_V!).reduce((sum, v) => sum + v, 0),
      5,
    );
    expect(amps).toBeCloseTo(
      current.reduce((sum, v) => sum + (Number.isNaN(v) ? 0 : v), 0),
      5,
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
});

it('what is no Parquet is told so', async () => {
  const end = await readParquetLog(new Uint8Array(100).buffer, () => undefined);
  expect(end.ok ? '' : end.issues[0]!.message).toContain('The Parquet file cannot be read');
});
