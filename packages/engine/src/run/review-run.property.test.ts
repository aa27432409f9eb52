import fc from 'fast-check';
import { expect, it } from 'vitest';
import { BURNS, IDLE, logOf, OUT, type Piece, PLAN, reviewOf, rowsOf, SHORTED } from './log.test-support.ts';
import type { LogBatch } from './log-batch.ts';
import type { RunOutcome } from './outcome.ts';
import { reviewRun } from './review-run.ts';

const SEED = 20_260_801;

/** Runs of 200 s with faults between them. */
const pieces = fc
  .array(
    fc.tuple(
      fc.integer({ min: 12, max: 40 }),
      fc.constantFrom<(lasts: number) => Piece>(
        (lasts) => OUT(0.6 + lasts),
        (lasts) => SHORTED(0.4 + lasts),
        (lasts) => BURNS(1.5 + lasts, { travel_m_per_s: 0 }),
      ),
      fc.double({ min: 0, max: 1.5, noNaN: true }),
    ),
    { minLength: 1, maxLength: 5 },
  )
  .map((faults) => [
    IDLE(2),
    OUT(1, { travel_m_per_s: 0 }),
    SHORTED(0.2, { travel_m_per_s: 0 }),
    ...faults.flatMap(([before, fault, lasts]) => [BURNS(before), fault(lasts)]),
    BURNS(30),
    IDLE(3),
  ]);

function summary({ events }: RunOutcome): [string, number, number][] {
  return events.map(({ kind, start, end }) => [kind, start, end]);
}

it('events do not move when the log comes in other pieces', () => {
  fc.assert(
    fc.property(pieces, fc.integer({ min: 1, max: 700 }), (run, size) => {
      const whole = logOf(run, 20);
      const review = reviewRun(PLAN);
      for (let at = 0; at < whole.time_s.length; at += size)
        review.push(rowsOf(whole, (i) => i >= at && i < at + size));
      const { passes, ...rest } = review.end();
      const once = reviewOf(whole, PLAN);
      expect(rest.events).toEqual(once.events);
      expect(rest.totals).toEqual(once.totals);
      expect(passes.map(({ from, to }) => [from, to])).toEqual(once.passes.map(({ from, to }) => [from, to]));
    }),
    { seed: SEED, numRuns: 20 },
  );
});

it('events do not move when the log is resampled, but by the time between its rows', () => {
  fc.assert(
    fc.property(pieces, fc.constantFrom(2, 3, 5), (run, every) => {
      const fine = logOf(run, 60);
      const coarse = rowsOf(fine, (i) => i % every === 0);
      const [a, b] = [summary(reviewOf(fine, PLAN)), summary(reviewOf(coarse, PLAN))];
      expect(b.map(([kind]) => kind)).toEqual(a.map(([kind]) => kind));
      const apart = (every + 1) / 60;
      a.forEach(([, start, end], i) => {
        expect(Math.abs(b[i]![1] - start)).toBeLessThanOrEqual(apart);
        expect(Math.abs(b[i]![2] - end)).toBeLessThanOrEqual(apart);
      });
    }),
    { seed: SEED, numRuns: 20 },
  );
});

it('columns may stand in any order', () => {
  fc.assert(
    fc.property(pieces, (run) => {
      const batch = logOf(run, 20);
      const turned: LogBatch = {
        ...batch,
        channels: Object.fromEntries(Object.entries(batch.channels).reverse()),
      };
      expect(summary(reviewOf(turned, PLAN))).toEqual(summary(reviewOf(batch, PLAN)));
    }),
    { seed: SEED, numRuns: 5 },
  );
});
