import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type TableBatch, TableReader } from './index.ts';

/** Ways in which loggers write a table. */
interface Way {
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  readonly eol: string;
  readonly quoted: boolean;
  readonly encoding: 'utf8' | 'utf16le' | 'latin1' | 'bom';
  readonly preamble: readonly string[];
  readonly unitRow: boolean;
  readonly closed: boolean;
}

const COLUMNS = [
  { name: 'Zeit', unit: 's', quantity: 'time', size: 1 },
  { name: 'Spannung', unit: 'V', quantity: 'voltage', size: 1 },
  { name: 'Stromstärke', unit: 'A', quantity: 'current', size: 1 },
  { name: 'Druck', unit: 'Pa', quantity: 'air_pressure', size: 1 },
] as const;

const way: fc.Arbitrary<Way> = fc
  .record({
    delimiter: fc.constantFrom(',', ';', '\t', '|'),
    decimal: fc.constantFrom('.' as const, ',' as const),
    eol: fc.constantFrom('\n', '\r\n', '\r'),
    quoted: fc.boolean(),
    encoding: fc.constantFrom('utf8' as const, 'utf16le' as const, 'latin1' as const, 'bom' as const),
    preamble: fc.constantFrom([], ['Logger 12'], ['# bay 2', '# rate 10 Hz'], ['Logger 12', 'Serial 4', '']),
    unitRow: fc.boolean(),
    closed: fc.boolean(),
  })
  // a decimal comma between commas is quoted by every logger that writes one
  .map((each) => (each.delimiter === ',' && each.decimal === ',' ? { ...each, quoted: true } : each));

const row = fc.tuple(
  fc.double({ min: 20.01, max: 60, noNaN: true }),
  fc.double({ min: 0.0001, max: 2000, noNaN: true }),
  fc.double({ min: 100_000.5, max: 700_000, noNaN: true }),
);

function written(rows: readonly (readonly number[])[], how: Way, order: readonly number[]): Uint8Array {
  const { delimiter, decimal, eol, quoted, encoding, preamble, unitRow, closed } = how;
  const q = (cell: string): string => (quoted ? `"${cell}"` : cell);
  const line = (cells: readonly string[]): string =>
    order.map((index) => q(cells[index]!)).join(delimiter) + (closed ? delimiter : '');
  const head = unitRow
    ? [line(COLUMNS.map(({ name }) => name)), line(COLUMNS.map(({ unit }) => unit))]
    : [line(COLUMNS.map(({ name, unit }) => `${name} [${unit}]`))];
  const body = rows.map((cells) => line(cells.map((value) => String(value).replace('.', decimal))));
  const text = [...preamble, ...head, ...body, ''].join(eol);
  return new Uint8Array(encoding === 'bom' ? Buffer.from(`\ufeff${text}`) : Buffer.from(text, encoding));
}

it('a table written in any dialect reads back the same, bit for bit, its columns in any order', () => {
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 4, maxLength: 30 }),
      way,
      fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 }),
      fc.integer({ min: 1, max: 400 }),
      (drawn, how, order, piece) => {
        const rows = drawn.map((cells, index) => [0.25 * index, ...cells]);
        const bytes = written(rows, how, order);
        const reader = new TableReader({}, { batchRows: 7 });
        const batches: TableBatch[] = [];
        for (let at = 0; at < bytes.length; at += piece)
          batches.push(...reader.push(bytes.subarray(at, at + piece)));
        const outcome = reader.end();
        if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
        batches.push(...outcome.value.batches);
        const { reading, rejected } = outcome.value.end;
        expect(rejected).toEqual([]);
        expect(reading.dialect.delimiter).toBe(how.delimiter);
        COLUMNS.forEach(({ quantity }, index) => {
          const read = batches.flatMap(({ columns }) => [...(columns[quantity] ?? [])]);
          expect(read).toEqual(rows.map((cells) => cells[index]));
        });
      },
    ),
    { seed: 41, numRuns: 250 },
  );
});

it('a table reads back the same in whatever units it is written', () => {
  const units = fc.tuple(
    fc.constantFrom(['s', 1], ['ms', 1e-3], ['min', 60]),
    fc.constantFrom(['V', 1], ['0.1 V', 0.1], ['mV', 1e-3]),
    fc.constantFrom(['A', 1], ['kA', 1e3]),
    fc.constantFrom(['Pa', 1], ['bar', 1e5], ['psi', 6894.757293168362], ['MPa', 1e6]),
  );
  fc.assert(
    fc.property(fc.array(row, { minLength: 4, maxLength: 20 }), units, (drawn, chosen) => {
      const rows = drawn.map((cells, index) => [0.25 * index, ...cells]);
      const header = COLUMNS.map(({ name }, index) => `${name} (${chosen[index]![0]})`).join(';');
      const text = `${header}\n${rows.map((cells) => cells.map((value, index) => value / Number(chosen[index]![1])).join(';')).join('\n')}\n`;
      const reader = new TableReader();
      const batches = [...reader.push(new Uint8Array(Buffer.from(text)))];
      const outcome = reader.end();
      if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
      batches.push(...outcome.value.batches);
      COLUMNS.forEach(({ quantity }, index) => {
        const read = batches.flatMap(({ columns }) => [...columns[quantity]!]);
        read.forEach((value, at) => {
          expect(Math.abs(value / (rows[at]![index]! || 1) - (rows[at]![index] === 0 ? 0 : 1))).toBeLessThan(
            1e-12,
          );
        });
      });
    }),
    { seed: 43, numRuns: 60 },
  );
});

it('never throws and never hangs, whatever the bytes', () => {
  const soup = fc.oneof(
    fc.uint8Array({ maxLength: 300 }),
    fc
      .array(
        fc.constantFrom(
          '1',
          ',',
          ';',
          '"',
          "'",
          '\n',
          '\r',
          '\t',
          ' ',
          't',
          'V',
          '.',
          '-',
          'e',
          '#',
          'NaN',
          '1:2',
          '\\',
        ),
        {
          maxLength: 120,
        },
      )
      .map((parts) => new Uint8Array(Buffer.from(parts.join('')))),
  );
  fc.assert(
    fc.property(soup, fc.integer({ min: 1, max: 60 }), (bytes, piece) => {
      const reader = new TableReader({}, { batchRows: 3 });
      let rows = 0;
      for (let at = 0; at < bytes.length; at += piece) {
        for (const batch of reader.push(bytes.subarray(at, at + piece))) rows += batch.row.length;
      }
      const outcome = reader.end();
      if (!outcome.ok) return;
      for (const batch of outcome.value.batches) rows += batch.row.length;
      expect(rows).toBe(outcome.value.end.rowsRead);
    }),
    { seed: 47, numRuns: 600 },
  );
});
