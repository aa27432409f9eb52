import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { LogParquetWriter, LogReader } from '@furrow/engine';
import { afterAll, expect, it } from 'vitest';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'furrow-run-'));
afterAll(() => rmSync(folder, { recursive: true }));

const streams = { print: () => undefined, problem: () => undefined };
const options = { json: true, units: 'metric' } as Parameters<typeof run>[1];

async function reportOf(name: string, bytes: Uint8Array) {
  const file = join(folder, name);
  writeFileSync(file, bytes);
  const told = await run([file], options, streams);
  return told.exit === 0 ? JSON.parse(told.print!) : told.problem;
}

it('a log kept as Parquet is reviewed as the text that it was made of', async () => {
  const rows = Array.from(
    { length: 3000 },
    (_, at) => `${at / 10},${at > 1000 && at < 1020 ? 0 : 41.5},${at > 1000 && at < 1020 ? 0 : 850},700`,
  );
  const text = Buffer.from(`time_s,voltage_V,current_A,travel_mm_per_min\n${rows.join('\n')}\n`);
  const reader = new LogReader();
  const batches = [...reader.push(text)];
  const outcome = reader.end();
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  const writer = new LogParquetWriter();
  const parquet = [...batches, ...outcome.value.batches].map((batch) => writer.push(batch));
  const [asText, asParquet] = [
    await reportOf('log.csv', text),
    await reportOf('log.parquet', Buffer.concat([...parquet, writer.end()])),
  ];
  expect(asParquet.reading).toMatchObject({ format: 'parquet', rows_read: 3000 });
  expect(asParquet.totals).toEqual(asText.totals);
  expect(asParquet.events).toEqual(asText.events);
  expect(asText.totals.arc_out_time_s).toBeGreaterThan(1);
  expect(asParquet.inputs.file_sha256).not.toBe(asText.inputs.file_sha256);
});

it('a file that begins as Parquet and is none is told so', async () => {
  expect(String(await reportOf('cut.parquet', Buffer.from('PAR1 and then nothing')))).toContain(
    'The Parquet file cannot be read',
  );
});
