import { describe, expect, it } from 'vitest';
import type { Job } from '../job/index.ts';
import type { SpreadLevels } from '../removal/index.ts';
import { planned } from './plan-of.test-support.ts';
import { STARTING, simulateShops } from './shop-simulator.test-support.ts';
import { type TestJobChange, testJob } from './test-job.test-support.ts';

/** Shops simulated per plan [-]. */
const SHOPS = 500;
/** Standard errors that a count may lie below what is promised [-]. */
const ERRORS = 3.5;

const TRIAL: TestJobChange = {
  locks: { layers: 1 },
  groove: { depth: { wanted: '9 mm', plus: '6 mm', minus: '2 mm' } },
};
const LAYERS: TestJobChange = {
  locks: { layers: 2 },
  kit: { trial: { on: 'none' } },
  groove: { depth: { wanted: '9 mm', plus: '4 mm', minus: '2 mm' } },
};
const BLIND: TestJobChange = {
  locks: { layers: 1 },
  plan: { gauge_stops: 'never' },
  groove: { depth: { wanted: '8 mm', plus: '20 mm', minus: '1 mm' } },
};
const RUN_IN: TestJobChange = { ...TRIAL, kit: { trial: { on: 'none' } } };
const WASH: TestJobChange = {
  groove: {
    shape: 'wash',
    depth: { wanted: '6 mm', plus: '6 mm', minus: '1 mm' },
    width: { least: '36 mm', most: '60 mm' },
    floor_width: '28 mm',
  },
};

const withLength = (change: TestJobChange, length: string): Job =>
  testJob({ ...change, seam: { length }, plan: { ...change.plan, objective: 'time' } }).job;

describe('Floors simulated on a fine grid along the seam', { timeout: 60_000 }, () => {
  it.each([
    ['blind', '100 mm', BLIND],
    ['blind', '20 m', BLIND],
    ['trial', '200 mm', TRIAL],
    ['trial', '8 m', TRIAL],
    ['run_in', '2 m', RUN_IN],
    ['layers', '300 mm', LAYERS],
    ['layers', '5 m', LAYERS],
    ['trial', '700 mm', WASH],
  ] as const)('keep what a plan promises: %s over %s', (way, length, change) => {
    const job = withLength(change, length);
    const { plan } = planned(job);
    expect(plan.ways).toContain(way);
    const came = simulateShops(plan, job, SHOPS, 11, STARTING);
    const error = (chance: number): number =>
      Math.sqrt((chance * (1 - chance)) / SHOPS + plan.chances.standardError ** 2);
    for (const key of ['reached', 'notTooDeep', 'ligamentKept'] as const) {
      const promised = plan.chances[key];
      expect(came[key], key).toBeGreaterThanOrEqual(
        promised - ERRORS * error(Math.min(0.99, promised)) - 0.005,
      );
    }
    // Nor is it told much worse than it is, for one track at least.
    if (plan.pattern.tracks === 1) {
      expect(came.reached).toBeLessThanOrEqual(plan.chances.reached + ERRORS * error(0.95) + 0.01);
    }
  });

  it('break the promise where a shop varies twice as much, and keep it more than kept where half', () => {
    const job = withLength(TRIAL, '3 m');
    const { plan } = planned(job);
    const scaled = (factor: number): SpreadLevels => ({
      job: STARTING.job * factor,
      pass: STARTING.pass * factor,
      seam: STARTING.seam * factor,
    });
    const half = simulateShops(plan, job, SHOPS, 12, scaled(0.5));
    const twice = simulateShops(plan, job, SHOPS, 12, scaled(2));
    expect(half.reached).toBeGreaterThan(0.97);
    expect(twice.reached).toBeLessThan(0.93);
    expect(twice.reached).toBeGreaterThan(0.6);
  });
});
