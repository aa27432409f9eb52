import { describe, expect, it } from 'vitest';
import { AnyReader, type TableBatch } from './index.ts';

function readAll(text: string, piece = 1 << 20) {
  const bytes = new Uint8Array(Buffer.from(text));
  const reader = new AnyReader();
  const batches: TableBatch[] = [];
  for (let at = 0; at < bytes.length; at += piece)
    batches.push(...reader.push(bytes.subarray(at, at + piece)));
  const outcome = reader.end();
  if (!outcome.ok) return { message: outcome.issues[0]!.message, end: undefined, column: () => [] };
  batches.push(...outcome.value.batches);
  return {
    message: '',
    end: outcome.value.end,
    column: (quantity: keyof TableBatch['columns']) =>
      batches.flatMap(({ columns }) => [...(columns[quantity] ?? [])]),
  };
}

describe('JSON lines', () => {
  const rows = [
    '{"time_s":0,"voltage_V":41.5,"I":850}',
    '{"time_s":0.1,"I":"851.5","voltage_V":null}',
    '{"time_s":0.2,"voltage_V":42}',
  ];

  it.each([1, 7, 1 << 20])('are read by name in pieces of %d bytes', (piece) => {
    const { end, column } = readAll(`${rows.join('\n')}\n`, piece);
    expect(end!.reading).toMatchObject({ format: 'json_lines', encoding: 'utf-8' });
    expect(column('time')).toEqual([0, 0.1, 0.2]);
    expect(column('voltage')).toEqual([41.5, Number.NaN, 42]);
    expect(column('current')).toEqual([850, 851.5, Number.NaN]);
  });

  it('may begin with words, which are no rows', () => {
    const { end, column } = readAll(`{"note":"made up"}\n${rows.join('\n')}\n{"note":"late"}\n`);
    expect(end).toMatchObject({
      rowsRead: 3,
      rejectedCount: 1,
      reading: { preamble: ['made up'], preambleLines: 1 },
    });
    expect(column('time')).toEqual([0, 0.1, 0.2]);
    expect(readAll('{"U [V]":"41.5"}\n{"U [V]":42}\n').column('voltage')).toEqual([41.5, 42]);
  });

  it('hold frames of readings, and objects inside them', () => {
    const { column } = readAll(
      '{"t":[0,0.1,0.2],"arc":{"U [V]":[41,42,43],"I [kA]":0.85}}\n{"t":0.3,"arc":{"U [V]":44}}\n',
    );
    expect(column('time')).toEqual([0, 0.1, 0.2, 0.3]);
    expect(column('voltage')).toEqual([41, 42, 43, 44]);
    expect(column('current')).toEqual([850, 850, 850, Number.NaN]);
  });

  it('that are none are counted with their lines', () => {
    const text = [
      rows[0],
      'oops',
      '[1,2]',
      rows[1],
      '',
      '{"t":[1,2],"U":[1,2,3]}',
      '{"other":5}',
      rows[2],
    ].join('\n');
    const { end } = readAll(text);
    expect(end!.rejected.map(({ line }) => line)).toEqual([2, 3, 6, 7]);
    expect(end).toMatchObject({ rowsRead: 3, blankLines: 1 });
    expect(readAll('{"a":\n').message).toContain('No line of the file is a JSON object');
  });

  it('longer than a mebibyte are skipped in bounded memory', () => {
    const { end } = readAll(`${rows[0]}\n{"x":"${'a'.repeat(3_000_000)}"}\n${rows[1]}\n`, 100_000);
    expect(end!.rejected).toEqual([{ line: 2, why: 'longer than 1024 KiB' }]);
    expect(end!.rowsRead).toBe(2);
  });
});
