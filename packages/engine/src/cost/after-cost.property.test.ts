import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { afterCostOf, moneyOf } from './after-cost.ts';
import { afterWork } from './after-work.ts';
import { costJob } from './cost-job.test-support.ts';
import { plainGrooveArea } from './groove-section.ts';
import { costPracticeOf } from './practice.ts';
import { USUAL_FACTORS } from './work-factors.ts';

const SEED = 20261125;

const size = fc.record({
  width: fc.double({ min: 4e-3, max: 0.06, noNaN: true }),
  depth: fc.double({ min: 1e-3, max: 0.05, noNaN: true }),
  more: fc.double({ min: 1e-5, max: 0.02, noNaN: true }),
});

const job = costJob('after:\n  discs_per_hour: 4\n  refill: { filler_per_kg: 3.2, gas_per_arc_hour: 7 }\n');

describe('the cost beside the arc', () => {
  const after = afterCostOf(job);
  const section = (topWidth: number, depth: number) => ({
    areaPerLength: plainGrooveArea(topWidth, depth),
    topWidth,
    depth,
    seamLength: job.seam.length,
  });

  it('is what the steps one by one add up to', () => {
    const practice = costPracticeOf(job);
    const before = job.after.set_up_time + job.after.commissioning_time;
    fc.assert(
      fc.property(size, ({ width, depth, more }) => {
        const groove = { ...section(width, depth), seamLength: 500 * more };
        const steps = afterWork(groove, practice, USUAL_FACTORS);
        const time = steps.reduce((sum, step) => sum + step.time, before);
        const cost = steps.reduce((sum, step) => sum + moneyOf(step), before * practice.crew);
        expect(after(groove).time / time).toBeCloseTo(1, 12);
        expect(after(groove).cost / cost).toBeCloseTo(1, 12);
      }),
      { seed: SEED },
    );
  });

  it('rises with depth', () => {
    fc.assert(
      fc.property(size, ({ width, depth, more }) => {
        const [less, greater] = [after(section(width, depth)), after(section(width, depth + more))];
        expect(greater.cost).toBeGreaterThan(less.cost);
        expect(greater.time).toBeGreaterThan(less.time);
      }),
      { seed: SEED },
    );
  });

  it('rises with width', () => {
    fc.assert(
      fc.property(size, ({ width, depth, more }) => {
        const [less, greater] = [after(section(width, depth)), after(section(width + more, depth))];
        expect(greater.cost).toBeGreaterThan(less.cost);
        expect(greater.time).toBeGreaterThan(less.time);
      }),
      { seed: SEED },
    );
  });

  it('holds set-up once, however long the seam, and all else by the metre', () => {
    const short = after({ ...section(0.016, 0.01), seamLength: 1 });
    const long = after({ ...section(0.016, 0.01), seamLength: 3 });
    const none = after({ ...section(0.016, 0.01), seamLength: 0 });
    expect(long.time - none.time).toBeCloseTo(3 * (short.time - none.time), 6);
    expect(long.cost - none.cost).toBeCloseTo(3 * (short.cost - none.cost), 8);
    expect(none.time).toBe(65 * 60);
  });
});
