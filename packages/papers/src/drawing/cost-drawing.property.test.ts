import type { CostStep } from '@furrow/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { costDrawing } from './cost-drawing.ts';
import { drawingToSvg } from './drawing-to-svg.ts';
import { textWidth } from './text-width.ts';

const settings = { seed: 20261125, numRuns: 150 };
const amount = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 1e7, noNaN: true }));
const estimate = fc.tuple(amount, amount, amount).map(([p50, more, mean]) => ({
  p50,
  p90: p50 + more,
  mean,
  p50_half_width: 0,
  p90_half_width: 0,
}));
const step: fc.Arbitrary<CostStep> = fc.record({
  step: fc.constantFrom('set_up' as const, 'refill' as const, 'arc' as const),
  title: fc.constantFrom('Set-up', 'Refill welding', 'Returns of the carriage'),
  time_s: estimate,
  time_share: fc.double({ min: 0, max: 1, noNaN: true }),
  cost: estimate,
  cost_share: fc.double({ min: 0, max: 1, noNaN: true }),
});
const cost = fc.record({
  steps: fc.array(step, { maxLength: 14 }),
  currency: fc.constantFrom('EUR', '¤', 'CHF'),
  priced: fc.boolean(),
});

describe('where minutes and money go', () => {
  test('is drawn with finite places only', () => {
    fc.assert(
      fc.property(cost, fc.integer({ min: 1, max: 2000 }), (given, width) => {
        expect(drawingToSvg(costDrawing({ cost: given, width }))).not.toMatch(/NaN|Infinity|undefined/u);
      }),
      settings,
    );
  });

  test('keeps every word on the sheet, from the width of a tablet on', () => {
    fc.assert(
      fc.property(cost, fc.integer({ min: 620, max: 2000 }), (given, width) => {
        for (const mark of costDrawing({ cost: given, width }).marks) {
          if (mark.kind !== 'text') continue;
          expect(mark.at.x).toBeGreaterThanOrEqual(0);
          expect(mark.at.x + textWidth(mark.text, mark.size)).toBeLessThanOrEqual(width + 0.5);
        }
      }),
      settings,
    );
  });

  test('has a row of words for every step that takes anything', () => {
    fc.assert(
      fc.property(cost, (given) => {
        const rows = given.steps.filter(({ time_s, cost: money }) => time_s.mean > 0 || money.mean > 0);
        const titles = costDrawing({ cost: given, width: 800 }).marks.filter(
          (mark) => mark.kind === 'text' && rows.some(({ title }) => title === mark.text),
        );
        expect(titles).toHaveLength(rows.length);
      }),
      settings,
    );
  });
});
