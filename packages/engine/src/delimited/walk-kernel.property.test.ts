import fc from 'fast-check';
import { expect, it } from 'vitest';
import { TableReader } from './table-reader.ts';

type Form = 'fastest' | 'typescript';

/** All that a reader gives of a text that comes in pieces. */
function readBy(form: Form, text: string, piece: number): unknown {
  const reader = new TableReader({}, { form, batchRows: 64 });
  const bytes = new TextEncoder().encode(text);
  const batches = [];
  for (let at = 0; at < bytes.length; at += piece)
    batches.push(...reader.push(bytes.subarray(at, at + piece)));
  const end = reader.end();
  if (!end.ok) return end;
  const { reading: _, ...rest } = end.value.end;
  return { batches: [...batches, ...end.value.batches], rest };
}

const number = fc.oneof(
  { weight: 8, arbitrary: fc.double({ min: -999, max: 9999, noNaN: true }).map((x) => x.toFixed(3)) },
  fc.constantFrom('-999', '+12.5', ' 3.25 ', '.5', '5.', '-0', '1e3', '', 'NaN', '"7,5"', '7 V', '-', '12-3'),
  fc.bigInt({ min: 0n, max: 10n ** 24n }).map(String),
  fc.bigInt({ min: 0n, max: 10n ** 18n }).map((x) => `0.${x}`),
);
const clock = fc.integer({ min: 0, max: 86_399_999 }).map((ms) => new Date(ms).toISOString().slice(11, 23));

it('WebAssembly and its twin read the same of any row, however the bytes are cut', () => {
  const row = fc.tuple(clock, number, number, fc.constantFrom('ok', '', 'x y', '"a;b"'), number);
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 3, maxLength: 120 }),
      fc.constantFrom(',', ';', '\t', ' '),
      fc.constantFrom('\n', '\r\n', '\r'),
      fc.integer({ min: 1, max: 4000 }),
      (rows, delimiter, eol, piece) => {
        const head = ['time', 'U [V]', 'I [A]', 'note', 'v [mm/min]'];
        const text = [head, ...rows].map((cells) => cells.join(delimiter)).join(eol) + eol;
        expect(readBy('fastest', text, piece)).toEqual(readBy('typescript', text, piece));
      },
    ),
    { numRuns: 60, seed: 20 },
  );
});

it('reads on over more bytes than it looks at once, and over a line that is longer than those', () => {
  const rows = Array.from({ length: 40_000 }, (_, n) => `${n / 100},${40 + (n % 7)}.5,${760 + (n % 9)}`);
  rows[20_000] = `200,${'4'.repeat(300_000)},770`;
  const text = `time [s],U [V],I [A]\n${rows.join('\n')}\n`;
  const fast = readBy('fastest', text, text.length) as { rest: { rowsRead: number } };
  expect(fast.rest.rowsRead).toBe(40_000);
  expect(fast).toEqual(readBy('typescript', text, text.length));
});
