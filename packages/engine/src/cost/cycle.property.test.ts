import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcWork } from './arc-work.test-support.ts';
import { costJob } from './cost-job.test-support.ts';
import { simulateCycle } from './cycle.ts';
import { COST_PARTS, CYCLE_STEPS } from './cycle-step.ts';
import { plainGrooveArea } from './groove-section.ts';
import { costPracticeOf } from './practice.ts';

const settings = { seed: 20261125, numRuns: 12 };
const job = costJob(
  'after:\n  cap: flush\n  discs_per_hour: 5\n  refill: { filler_per_kg: 3, gas_per_arc_hour: 6 }\n',
);
const practice = costPracticeOf(job);

const size = fc.record({
  width: fc.double({ min: 6e-3, max: 0.04, noNaN: true }),
  depth: fc.double({ min: 2e-3, max: 0.03, noNaN: true }),
  more: fc.double({ min: 1e-4, max: 0.02, noNaN: true }),
  depthReached: fc.double({ min: 0.5, max: 1, noNaN: true }),
  seed: fc.nat({ max: 2 ** 31 - 1 }),
});

/** A plan that leaves a plain groove of this size, give or take a tenth. */
function plan(width: number, depth: number, depthReached: number) {
  const around = (middle: number) => ({ p05: 0.9 * middle, p50: middle, p95: 1.1 * middle });
  return arcWork({
    section: { areaPerLength: plainGrooveArea(width, depth), topWidth: width, depth, seamLength: 4 },
    depth: around(depth),
    width: around(width),
    depthReached,
    hirePerDay: 30,
  });
}

describe('any cycle', () => {
  it('has shares that are no less than 0 and make up the whole', () => {
    fc.assert(
      fc.property(size, ({ width, depth, depthReached, seed }) => {
        const cycle = simulateCycle(job, plan(width, depth, depthReached), practice, seed);
        for (const shares of [
          CYCLE_STEPS.map((step) => cycle.timeOf[step].share),
          CYCLE_STEPS.map((step) => cycle.costOf[step].share),
          COST_PARTS.map((part) => cycle.partOf[part].share),
        ]) {
          expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
          expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
        }
      }),
      settings,
    );
  });

  it('costs and takes more with the same draws where the groove is deeper', () => {
    fc.assert(
      fc.property(size, ({ width, depth, more, depthReached, seed }) => {
        const less = simulateCycle(job, plan(width, depth, depthReached), practice, seed);
        const greater = simulateCycle(job, plan(width, depth + more, depthReached), practice, seed);
        for (const key of ['p50', 'p90', 'mean'] as const) {
          expect(greater.cost[key]).toBeGreaterThan(less.cost[key]);
          expect(greater.time[key]).toBeGreaterThan(less.time[key]);
        }
      }),
      settings,
    );
  });
});
