import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactAmount } from './exact-amount.ts';
import { unitsOf } from './find-unit.ts';
import { formatAmount } from './format-amount.ts';
import { parseAmount } from './parse-amount.ts';
import { QUANTITY_KINDS, type QuantityKind, type UnitSystem } from './quantity-kind.ts';

const SEED = 20240611;
const RUNS = 2000;
const INCH = 0.0254;

const kinds = fc.constantFrom(...QUANTITY_KINDS);
const systems = fc.constantFrom<UnitSystem>('inch', 'metric');

/** Values over twelve decades; a share and a temperature have bounds of their own. */
function valuesOf(kind: QuantityKind): fc.Arbitrary<number> {
  if (kind === 'share') return fc.double({ min: 0, max: 1, noNaN: true });
  if (kind === 'temperature') return fc.double({ min: 1, max: 4000, noNaN: true });
  return fc
    .tuple(fc.double({ min: 1, max: 10, noNaN: true }), fc.integer({ min: -6, max: 6 }), fc.boolean())
    .map(([mantissa, power, negative]) => mantissa * 10 ** power * (negative ? -1 : 1));
}

const amounts = kinds.chain((kind) =>
  fc.record({ kind: fc.constant(kind), value: valuesOf(kind), system: systems }),
);

/** Half of the last step shown, in the SI unit: what formatAmount promises. */
function displayRounding(value: number, kind: QuantityKind, system: UnitSystem): number {
  const size = Math.abs(value);
  const inch = system === 'inch';
  switch (kind) {
    case 'length':
      if (inch)
        return size < INCH / 16
          ? 0.0005 * INCH
          : size < INCH / 4
            ? INCH / 128
            : size < 2 * INCH
              ? INCH / 32
              : size < 10 * INCH
                ? INCH / 16
                : size < 24 * INCH
                  ? INCH / 8
                  : INCH / 2;
      return size < 0.001 ? 5e-6 : size < 0.09995 ? 5e-5 : size < 0.9995 ? 5e-4 : 5e-3;
    case 'speed':
      return inch ? (0.05 * INCH) / 60 : 0.0005 / 60;
    case 'pressure':
      return inch ? 0.5 * 6894.757293168361 : 5000;
    case 'current':
      return 0.5;
    case 'voltage':
      return 0.05;
    case 'time':
      return size < 0.095 ? 0.005 : size < 9.95 ? 0.05 : size < 599.5 ? 0.5 : 30;
    case 'angle':
      return (0.05 * Math.PI) / 180;
    case 'area':
      return inch ? 0.0005 * INCH ** 2 : 0.05e-6;
    case 'temperature':
      // in fives from 100 degF on
      return inch ? (1.8 * value - 459.67 < 99.5 ? 0.5 : 2.5) / 1.8 : 0.5;
    case 'air_flow':
      return inch ? 0.05 * 0.000471947443 : 0.5 / 60000;
    case 'power':
      return 50;
    case 'share':
      return size > 0.99 ? 1e-4 : 5e-4;
    case 'volume':
      // that of a room is written to three figures
      return size >= 20 ? 5e-3 * size : 0.5 * (inch ? 0.003785411784 : 0.001);
    case 'resistance':
      return 5e-7;
  }
}

describe('amounts there and back', () => {
  it('parseAmount(exactAmount(x)) is x within 1e-9', () => {
    fc.assert(
      fc.property(amounts, ({ kind, value, system }) => {
        const back = parseAmount(exactAmount(value, kind, system), kind);
        return back.ok && Math.abs(back.value - value) <= 1e-9 * Math.abs(value);
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it('exactAmount is settled after one round: writing what was read gives the same text', () => {
    fc.assert(
      fc.property(amounts, ({ kind, value, system }) => {
        const text = exactAmount(value, kind, system);
        const back = parseAmount(text, kind);
        return back.ok && exactAmount(back.value, kind, system) === text;
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it('parseAmount(formatAmount(x)) is x within the rounding shown', () => {
    fc.assert(
      fc.property(amounts, ({ kind, value, system }) => {
        const back = parseAmount(formatAmount(value, kind, system), kind);
        const allowed = displayRounding(value, kind, system) * (1 + 1e-6) + 1e-9 * Math.abs(value);
        return back.ok && Math.abs(back.value - value) <= allowed;
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it('a fraction of an inch reads as the fraction', () => {
    const sixteenths = fc.record({ whole: fc.nat(200), top: fc.integer({ min: 1, max: 63 }) });
    fc.assert(
      fc.property(
        sixteenths,
        fc.constantFrom(' ', '-'),
        fc.constantFrom(' in', '"', 'in', '″'),
        (n, join, unit) => {
          const back = parseAmount(`${n.whole}${join}${n.top}/64${unit}`, 'length');
          return back.ok && Math.abs(back.value - (n.whole + n.top / 64) * INCH) < 1e-12;
        },
      ),
      { seed: SEED, numRuns: 500 },
    );
  });
});

describe('any text', () => {
  const pieces = fc.constantFrom(
    ...[
      '1',
      '12',
      '0',
      '500',
      '.',
      ',',
      '/',
      '-',
      '−',
      '+',
      ' ',
      '\u00a0',
      'e',
      'E9',
      '×10³',
      '½',
      '″',
      "'",
      '"',
      '°',
    ],
    ...QUANTITY_KINDS.flatMap((kind) => [...unitsOf(kind)]),
    ...['AWG', 'psia', 'NaN', 'Infinity', '__proto__', 'constructor', '\u0000', '🔥', '٣', '\ud800'],
  );
  const mixed = fc.array(pieces, { maxLength: 12 }).map((parts) => parts.join(''));
  const texts = fc.oneof(mixed, fc.string({ maxLength: 80 }), fc.string({ unit: 'binary', maxLength: 80 }));

  it('is a finite number or a refusal that tells what is accepted', () => {
    fc.assert(
      fc.property(texts, kinds, (text, kind) => {
        const outcome = parseAmount(text, kind);
        if (outcome.ok) {
          expect(Number.isFinite(outcome.value)).toBe(true);
          return;
        }
        expect(outcome.issues).toHaveLength(1);
        const [issue] = outcome.issues;
        expect(issue?.message).toMatch(/[.?]$/);
        expect(issue?.message).not.toMatch(/\p{Cc}/u);
        if (!/NaN|Infinity/.test(text)) expect(issue?.message).not.toMatch(/undefined|NaN|Infinity/);
        expect(issue?.accepted).toBeTruthy();
        // the length cap holds for the message as well
        expect(issue?.message.length).toBeLessThan(400);
      }),
      { seed: SEED, numRuns: 20000 },
    );
  });

  it('what is offered as nearest is itself accepted', () => {
    fc.assert(
      fc.property(texts, kinds, (text, kind) => {
        const outcome = parseAmount(text, kind);
        const nearest = outcome.ok ? undefined : outcome.issues[0]?.nearest;
        if (nearest !== undefined) expect(parseAmount(nearest, kind).ok, `${text} -> ${nearest}`).toBe(true);
      }),
      { seed: SEED, numRuns: 20000 },
    );
  });
});
