import { describe, expect, it } from 'vitest';
import { arcWorkOfPlan } from './arc-work-of-plan.ts';
import type { PlanOutcome } from './outcome.ts';
import { planOf } from './plan-of.test-support.ts';
import { testJob } from './test-job.test-support.ts';

const { job } = testJob({});
const AROUND = { airFlow: undefined, coolingTime: 0, hirePerDay: 0 };
const result = planOf(job);
if ('refusal' in result) throw new Error('the job of the tests is refused');

/** The plan of the tests with so many stations at its gauge stops, and so many tracks. */
function withStops(stations: readonly number[], tracks: number): PlanOutcome {
  const { plan } = result as { readonly plan: PlanOutcome };
  const { tryout: _, ...rest } = plan;
  return {
    ...rest,
    tryout: undefined,
    pattern: { ...plan.pattern, tracks },
    stops: stations.map((count) => ({ stations: Array.from({ length: count }, (_each, at) => at) }) as never),
  };
}

describe('the time for gauging', () => {
  it('counts each station on each track', () => {
    const gaugeTime = (plan: PlanOutcome): number => arcWorkOfPlan(plan, job, AROUND).gaugeTime;
    const { gauge_time: each } = job.rates;
    expect(each).toBeGreaterThan(0);
    expect(gaugeTime(withStops([], 3))).toBe(0);
    expect(gaugeTime(withStops([5], 1))).toBeCloseTo(5 * each, 9);
    expect(gaugeTime(withStops([5, 3], 3))).toBeCloseTo(24 * each, 9);
  });
});

it('counts a trial as one start more than the passes', () => {
  const plain = withStops([], 1);
  const trial = { ...plain, tryout: { kind: 'trial', stations: [1, 2] } as never };
  const starts = (plan: PlanOutcome): number => arcWorkOfPlan(plan, job, AROUND).passes;
  expect(starts(plain)).toBe(plain.passes.length);
  expect(starts(trial)).toBe(plain.passes.length + 1);
});
