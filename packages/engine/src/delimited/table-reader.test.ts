import { describe, expect, it } from 'vitest';
import { Utf16ToUtf8 } from './encoding.ts';
import { type GivenReading, type TableBatch, type TableEnd, TableReader } from './index.ts';

const bytesOf = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'utf8'));

function readAll(input: string | Uint8Array, given: GivenReading = {}, piece = 1 << 20, batchRows = 8192) {
  const bytes = typeof input === 'string' ? bytesOf(input) : input;
  const reader = new TableReader(given, { batchRows });
  const batches: TableBatch[] = [];
  for (let at = 0; at < bytes.length; at += piece)
    batches.push(...reader.push(bytes.subarray(at, at + piece)));
  const outcome = reader.end();
  if (!outcome.ok) return { message: outcome.issues[0]!.message, batches, end: undefined };
  batches.push(...outcome.value.batches);
  return { message: '', batches, end: outcome.value.end as TableEnd };
}

const column = (batches: readonly TableBatch[], quantity: keyof TableBatch['columns']): number[] =>
  batches.flatMap(({ columns }) => [...(columns[quantity] ?? [])]);

const PLAIN = 't [s],U [V],I [kA]\n0,41.5,0.85\n0.1,41.7,0.84\n0.2,41.6,0.845\n';

describe('a delimited file', () => {
  it('is read into SI by its header', () => {
    const { batches, end } = readAll(PLAIN);
    expect(column(batches, 'time')).toEqual([0, 0.1, 0.2]);
    expect(column(batches, 'voltage')).toEqual([41.5, 41.7, 41.6]);
    expect(column(batches, 'current')).toEqual([850, 840, 845]);
    expect(batches.flatMap(({ row, line }) => [[...row], [...line]])).toEqual([
      [1, 2, 3],
      [2, 3, 4],
    ]);
    expect(end).toMatchObject({ rowsRead: 3, rejectedCount: 0, unread: [] });
  });

  it.each([
    ['UTF-8 with its mark', (text: string) => Buffer.from(`\ufeff${text}`), 'utf-8-bom'],
    ['UTF-16, low byte first', (text: string) => Buffer.from(`\ufeff${text}`, 'utf16le'), 'utf-16le'],
    ['UTF-16 without a mark', (text: string) => Buffer.from(text, 'utf16le'), 'utf-16le'],
    [
      'UTF-16, high byte first',
      (text: string) => Buffer.from(`\ufeff${text}`, 'utf16le').swap16(),
      'utf-16be',
    ],
    ['Windows-1252', (text: string) => Buffer.from(text, 'latin1'), 'windows-1252'],
  ])('is read in %s', (_, encode, encoding) => {
    const text = 'Zeit [s];Stromst\u00e4rke [A];Spannung [V]\r\n0,0;850;41,5\r\n0,1;851;41,25\r\n';
    for (const piece of [1, 7, 1 << 20]) {
      const { batches, end } = readAll(new Uint8Array(encode(text)), {}, piece);
      expect(end!.reading.encoding).toBe(encoding);
      expect(end!.reading.columns[1]!.name).toBe('Stromst\u00e4rke [A]');
      expect(column(batches, 'current')).toEqual([850, 851]);
      expect(column(batches, 'voltage')).toEqual([41.5, 41.25]);
    }
  });

  it('keeps characters beyond the basic plane and replaces halves of them', () => {
    const wide = new Utf16ToUtf8('utf-16le');
    const bytes = Buffer.from('a\u{1f525}\ud83dz', 'utf16le');
    const out = [...bytes].map((byte) => Buffer.from(wide.push(Uint8Array.of(byte))));
    expect(Buffer.concat(out).toString()).toBe('a\u{1f525}\ufffdz');
  });

  it('does not lean on bytes that the caller uses again', () => {
    const whole = Buffer.from(PLAIN + '0.3,41,0.85\n'.repeat(60_000));
    const buffer = Buffer.alloc(50_000);
    const reader = new TableReader();
    let rows = 0;
    for (let at = 0; at < whole.length; at += buffer.length) {
      const count = whole.copy(buffer, 0, at, at + buffer.length);
      for (const batch of reader.push(buffer.subarray(0, count))) rows += batch.row.length;
    }
    const outcome = reader.end();
    if (!outcome.ok) throw new Error('not read');
    for (const batch of outcome.value.batches) rows += batch.row.length;
    expect(rows).toBe(60_003);
    expect(outcome.value.end.rejectedCount).toBe(0);
  });

  it('counts what it does not read, with line numbers, and drops nothing in silence', () => {
    const text = [
      '# logger 4',
      'time,voltage,current,note',
      's,V,A,',
      '0,41.5,850,ok',
      '0.1,NaN,851,"a, ""b"""',
      '',
      '0.2,-999,inf,x',
      '# stopped',
      '0.3,abc,851,',
      '0.4,41',
      '0.5,41,852,y,z',
      'time,voltage,current,note',
      '0.6,40,850,',
      'end of file',
      '0.7,4',
    ].join('\n');
    const { batches, end } = readAll(text);
    expect(batches.flatMap(({ row }) => [...row])).toEqual([1, 2, 3, 4, 7]);
    expect(column(batches, 'voltage')).toEqual([41.5, Number.NaN, Number.NaN, Number.NaN, 40]);
    expect(column(batches, 'current')).toEqual([850, 851, Number.NaN, 851, 850]);
    expect(end!.rejected).toEqual([
      { line: 8, why: 'a remark' },
      { line: 10, why: '2 cells where 4 stand' },
      { line: 11, why: '5 cells where 4 stand' },
      { line: 12, why: 'the header again' },
      { line: 14, why: '1 cell where 4 stand' },
      { line: 15, why: 'the last line is cut: 2 cells where 4 stand' },
    ]);
    expect(end).toMatchObject({ rejectedCount: 6, blankLines: 1, headerAgain: [12], rowsRead: 5 });
    expect(end!.unread).toEqual([
      {
        column: 'voltage',
        missing: 1,
        words: 1,
        firstWord: { line: 5, read: 'NaN' },
        noValue: 1,
        infinite: 0,
        unreadable: 1,
        examples: [{ line: 9, read: 'abc' }],
      },
      {
        column: 'current',
        missing: 0,
        words: 0,
        noValue: 0,
        infinite: 1,
        unreadable: 0,
        examples: [],
        firstInfinite: { line: 7, read: 'inf' },
      },
    ]);
    expect(end!.reading).toMatchObject({ preambleLines: 1, headerLines: 2, comment: '#' });
  });

  it('takes a number for no value only where the column cannot show it', () => {
    const { batches, end } = readAll('t [s],x [mm],U [V]\n0,-999,9999\n1,999,41\n2,-5,40\n');
    expect(column(batches, 'x')[1]).toBeCloseTo(0.999);
    expect(column(batches, 'voltage')).toEqual([Number.NaN, 41, 40]);
    expect(end!.unread.map((each) => [each.column, each.noValue])).toEqual([['U [V]', 1]]);
  });

  it('reads quoted cells over several lines', () => {
    const { batches } = readAll('note,t [s],U [V]\n"two\nlines",0,41\n"fine",1,42\n"ok",3,44\n');
    expect(column(batches, 'time')).toEqual([0, 1, 3]);
    expect(batches.flatMap(({ line }) => [...line])).toEqual([2, 4, 5]);
  });

  it('goes on behind a quote that is not closed', () => {
    const rows = (from: number, count: number): string =>
      Array.from({ length: count }, (_, index) => `"fine",${from + index},42\n`).join('');
    const text = `note,t [s],U [V]\n${rows(0, 30_000)}"open,30000,43\n${rows(30_001, 120_000)}`;
    const { end } = readAll(text, {}, 10_000);
    expect(end!.rejectedCount).toBe(1);
    expect(end!.rejected[0]!.line).toBe(30_002);
    expect(end!.rowsRead).toBe(150_000);
  });

  it('says why a file gives nothing', () => {
    expect(readAll('').message).toBe('The file is empty.');
    expect(readAll('\n \n').message).toContain('blank lines');
    expect(readAll('t [s],U [V]\n').message).toContain('no row of data');
    expect(readAll(Uint8Array.from({ length: 5000 }, (_, i) => (i * 37) % 256)).message).toContain(
      'not text',
    );
  });

  it('gives up a file of one endless line, and skips one such line among others, in bounded memory', () => {
    const reader = new TableReader();
    const piece = new Uint8Array(100_000).fill(49);
    for (let sent = 0; sent < 40; sent += 1) expect(reader.push(piece)).toEqual([]);
    const outcome = reader.end();
    expect(outcome.ok ? '' : outcome.issues[0]!.message).toContain('first line does not end');

    const lines = `${PLAIN}${'0.3,41,0.85\n'.repeat(30_000)}`;
    const { end, batches } = readAll(`${lines}${'9'.repeat(3_000_000)}\n0.4,44,0.85\n`, {}, 50_000);
    expect(end!.rejected).toEqual([{ line: 30_005, why: 'longer than 1024 KiB' }]);
    expect(batches.at(-1)!.columns.voltage!.at(-1)).toBe(44);
    expect(batches.at(-1)!.line.at(-1)).toBe(30_006);
  });

  it('reads the same in pieces of any size and batches of any length', () => {
    const text = `# a\n${PLAIN}"0,3",41,x\r\n0.4,41.12345678901234567,1e-1\n`;
    const whole = readAll(text);
    for (const piece of [1, 2, 3, 11]) {
      for (const rows of [1, 2, 5]) {
        const { batches, end } = readAll(text, {}, piece, rows);
        for (const quantity of ['time', 'voltage', 'current'] as const) {
          expect(column(batches, quantity)).toEqual(column(whole.batches, quantity));
        }
        expect(end!.rejected).toEqual(whole.end!.rejected);
      }
    }
    expect(column(whole.batches, 'voltage').at(-1)).toBe(Number('41.12345678901234567'));
    expect(column(whole.batches, 'current').at(-1)).toBe(100);
  });

  it('takes what a person says in place of what it would find', () => {
    const given: GivenReading = {
      delimiter: ';',
      decimal: ',',
      preambleLines: 0,
      headerLines: 1,
      columns: [
        { number: 2, quantity: 'travel', unit: 'in/min' },
        { name: 'c', quantity: 'none' },
      ],
    };
    const { batches, end } = readAll('a;b;c\n0;10,5;1\n1;10,5;2\n2;10,5;3\n3;10,5;4\n', given);
    expect(column(batches, 'travel')[0]).toBeCloseTo((10.5 * 0.0254) / 60, 12);
    expect(end!.reading.columns.map(({ quantity }) => quantity)).toEqual(['time', 'travel', undefined]);
    const wrong = readAll(PLAIN, { columns: [{ number: 2, quantity: 'voltage', unit: 'A' }] });
    expect(wrong.end!.reading.columns[1]).toMatchObject({ unit: undefined, asks: true });
  });
});
