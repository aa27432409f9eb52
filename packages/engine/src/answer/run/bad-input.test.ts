import { describe, expect, it } from 'vitest';
import type { RunReport } from '../../result/index.ts';
import { answerRun } from './answer-run.ts';

const bytesOf = (text: string): Uint8Array => new Uint8Array(Buffer.from(text));

/** Reviews what comes in pieces; the report, or why there is none. */
function review(pieces: Iterable<Uint8Array>): { report?: RunReport; why: string } {
  const run = answerRun({ version: '0' });
  for (const piece of pieces) run.push(piece);
  const end = run.end('ab');
  if (!end.ok) return { why: end.issues.map(({ message }) => message).join(' ') };
  return { report: end.value.report, why: '' };
}

const HEADER = 'time [s],voltage [V],current [A]\n';
const rows = (
  count: number,
  from = 0,
  each = (n: number) => `${n / 10},${40 + (n % 3)},${450 + (n % 5)}`,
): string => Array.from({ length: count }, (_, n) => `${each(from + n)}\n`).join('');

function* repeated(piece: Uint8Array, times: number): Generator<Uint8Array> {
  for (let at = 0; at < times; at += 1) yield piece;
}

describe('what is no log gives no report, and says why', () => {
  it.each([
    ['an empty file', '', 'The file is empty.'],
    ['one column', `voltage [V]\n${'40\n'.repeat(50)}`, 'No column is a clock'],
    ['only a header', HEADER, 'a header but no row of data'],
    ['words', 'all was well\nthe groove is fine\n', ''],
  ])('%s', (_name, text, why) => {
    const told = review([bytesOf(text)]);
    expect(told.report).toBeUndefined();
    expect(told.why).toContain(why);
    expect(told.why.length).toBeGreaterThan(10);
  });

  it('a binary file', () => {
    const bytes = Uint8Array.from({ length: 5000 }, (_, n) => (n * 7919) % 256);
    expect(review([bytes])).toMatchObject({ why: expect.stringContaining('not text') });
  });

  it('two gigabytes of one line', () => {
    const told = review(repeated(new Uint8Array(1 << 20).fill(55), 2048));
    expect(told).toMatchObject({ why: expect.stringContaining('does not end within') });
  });
});

describe('what is wrong in a log is told, and what came before is kept', () => {
  const plain = review([bytesOf(HEADER + rows(200))]).report!;

  it('two gigabytes of one line behind its rows', () => {
    function* pieces(): Generator<Uint8Array> {
      yield bytesOf(HEADER + rows(200));
      yield* repeated(new Uint8Array(1 << 20).fill(55), 2048);
    }
    const { report } = review(pieces());
    expect(report!.reading.rows_rejected).toEqual([{ line: 202, why: 'longer than 1024 KiB' }]);
    expect(report!.totals).toEqual(plain.totals);
  });

  it('no number and infinity as text: as they were read, and never as a number', () => {
    const odd = ['NaN', 'inf', '-Infinity', '1e999', 'n/a', '', 'OL'];
    const text = rows(
      200,
      0,
      (n) => `${n / 10},${n % 20 === 9 ? (odd[(n - 9) / 20] ?? '40') : 40 + (n % 3)},${450 + (n % 5)}`,
    );
    const { report } = review([bytesOf(HEADER + text)]);
    expect(report!.reading.remarks).toEqual([
      'Cells of "voltage [V]" without a value: 1 empty, 2 with a word for no value, such as "NaN" on line 11, 4 infinite, such as "inf" on line 31.',
    ]);
    expect(report!.reading.rows_read).toBe(200);
    expect(report!.totals.mean_arc_voltage_V).toBeCloseTo(plain.totals.mean_arc_voltage_V!, 1);
    expect(JSON.stringify(report)).not.toMatch(/NaN,|Infinity,/u);
  });

  it('times that stand still', () => {
    const { report } = review([
      bytesOf(HEADER + rows(100) + rows(20, 100, () => '9.9,41,451') + rows(80, 100)),
    ]);
    expect(report!.reading.clock!.mended_count).toBeGreaterThan(0);
    expect(report!.reading.rows_read).toBe(200);
    expect(report!.totals.arc_time_s).toBeCloseTo(plain.totals.arc_time_s! - 2, 0);
  });

  it('times that run back', () => {
    const { report } = review([bytesOf(HEADER + rows(100) + rows(100, 20))]);
    expect(report!.reading.clock!.mended).toMatchObject([{ kind: 'set_back', row: 101 }]);
    expect(report!.totals.arc_time_s).toBeCloseTo(plain.totals.arc_time_s!, 0);
    expect(report!.events.map(({ kind }) => kind)).toContain('clock_step');
  });

  it('two logs in one file', () => {
    const { report } = review([bytesOf(HEADER + rows(100) + HEADER + rows(100))]);
    expect(report!.reading.remarks.join(' ')).toContain('more than one log');
    expect(report!.reading.rows_rejected).toEqual([{ line: 102, why: 'the header again' }]);
    expect(report!.reading.rows_read).toBe(200);
  });

  it('a last line that is cut', () => {
    const { report } = review([bytesOf(`${HEADER}${rows(200)}20.0,4`)]);
    expect(report!.reading.says).toContain('the last line is cut');
    expect(report!.totals).toEqual(plain.totals);
  });
});
