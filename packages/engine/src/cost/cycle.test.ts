import { describe, expect, it } from 'vitest';
import { drawStream } from '../numeric/index.ts';
import { arcWork } from './arc-work.test-support.ts';
import { costJob } from './cost-job.test-support.ts';
import { simulateCycle } from './cycle.ts';
import { COST_PARTS, CYCLE_STEPS } from './cycle-step.ts';
import { plannedWay } from './other-way.ts';
import { costPracticeOf } from './practice.ts';
import { drawFactors } from './work-factors.ts';

const SURE = 'after:\n  spread: { least: 100 %, most: 100 % }\n';

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

describe('a cycle', () => {
  it('is the same for the same seed, and another for another', () => {
    const job = costJob();
    const practice = costPracticeOf(job);
    const once = simulateCycle(job, arcWork(), practice, 7);
    expect(simulateCycle(job, arcWork(), practice, 7)).toEqual(once);
    expect(simulateCycle(job, arcWork(), practice, 8).cost.p50).not.toBe(once.cost.p50);
  });

  it('without any scatter is the sum at the usual durations, in every trial', () => {
    const job = costJob(SURE);
    const practice = costPracticeOf(job);
    const sure = arcWork({
      arcTime: { p50: 480, p90: 480 },
      electrodes: { p50: 4, p90: 4 },
      depth: { p05: 0.01, p50: 0.01, p95: 0.01 },
      width: { p05: 0.016, p50: 0.016, p95: 0.016 },
      depthReached: 1,
    });
    const cycle = simulateCycle(job, sure, practice, 1);
    const planned = plannedWay(sure, practice);
    expect(cycle.cost.p50).toBeCloseTo(planned.cost, 8);
    expect(cycle.time.p50).toBeCloseTo(planned.time, 6);
    expect(cycle.cost.p90 - cycle.cost.p50).toBeCloseTo(0, 8);
    expect(cycle.cost.p90HalfWidth).toBeCloseTo(0, 8);
    expect(cycle.reworked).toBe(0);
  });

  it('mends as many grooves as do not reach their depth, and pays for it', () => {
    const job = costJob();
    const practice = costPracticeOf(job);
    const cycle = simulateCycle(job, arcWork({ depthReached: 0.8 }), practice, 3);
    expect(cycle.reworked).toBeCloseTo(0.2, 1);
    expect(cycle.timeOf.rework.estimate.mean).toBeGreaterThan(0);
    expect(simulateCycle(job, arcWork({ depthReached: 1 }), practice, 3).timeOf.rework.estimate.mean).toBe(0);
    const stated = simulateCycle(job, arcWork({ depthReached: 0, reworkTime: 1000 }), practice, 3);
    expect(stated.timeOf.rework.estimate.p50).toBeGreaterThan(800);
  });

  it('counts hired plant by whole days of the gouging: what comes after the arc does not need it', () => {
    const job = costJob(`${SURE}  skin_grinding_cm3_per_min: 1\n`);
    const practice = costPracticeOf(job);
    const plain = simulateCycle(job, arcWork(), practice, 1);
    const hired = simulateCycle(job, arcWork({ hirePerDay: 100 }), practice, 1);
    const gouging = sum(CYCLE_STEPS.slice(0, 9).map((step) => plain.timeOf[step].estimate.mean));
    expect(CYCLE_STEPS[8]).toBe('rework');
    expect(Math.ceil(plain.time.p50 / (8 * 3600))).toBeGreaterThan(1);
    expect(gouging).toBeLessThan(8 * 3600);
    expect(hired.partOf.hire.estimate.p50).toBe(100);
    expect(hired.partOf.hire.estimate.p90).toBe(100);
    expect(hired.cost.p50).toBeCloseTo(plain.cost.p50 + 100, 6);
    const short = simulateCycle(job, arcWork({ hirePerDay: 100, shift: gouging / 2.5 }), practice, 1);
    expect(short.partOf.hire.estimate.p50).toBe(300);
  });

  it('lets a bad day lengthen all kinds of work together', () => {
    const stream = drawStream(11);
    const spread = costJob('after:\n  spread: { least: 50 %, most: 200 % }\n').after.spread;
    const draws = Array.from({ length: 4000 }, () => drawFactors(spread, stream));
    const of = (kind: 'cleaning' | 'refill'): number[] => draws.map((factors) => factors[kind]);
    const mean = (values: readonly number[]): number => sum(values) / values.length;
    const [a, b] = [of('cleaning'), of('refill')];
    const [ma, mb] = [mean(a), mean(b)];
    const covariance = mean(a.map((value, i) => (value - ma) * (b[i]! - mb)));
    const spreadOf = (values: readonly number[], m: number): number =>
      Math.sqrt(mean(values.map((value) => (value - m) ** 2)));
    expect(covariance / (spreadOf(a, ma) * spreadOf(b, mb))).toBeCloseTo(0.5, 1);
    // each kind alone keeps its own triangle
    expect(ma).toBeCloseTo((0.5 + 1 + 2) / 3, 1);
  });

  it('puts every share of the whole into steps and into parts, once each', () => {
    const job = costJob('after:\n  discs_per_hour: 6\n  refill: { filler_per_kg: 3 }\n  cap: flush\n');
    const cycle = simulateCycle(job, arcWork({ hirePerDay: 50 }), costPracticeOf(job), 5);
    expect(sum(CYCLE_STEPS.map((step) => cycle.timeOf[step].share))).toBeCloseTo(1, 10);
    expect(sum(CYCLE_STEPS.map((step) => cycle.costOf[step].share))).toBeCloseTo(1, 10);
    expect(sum(COST_PARTS.map((part) => cycle.partOf[part].share))).toBeCloseTo(1, 10);
  });

  it('costs nothing, without a share that cannot be told, where no rate and no price is stated', () => {
    const job = costJob();
    const free = {
      ...job,
      rates: { ...job.rates, labour_per_hour: 0, power_per_kWh: 0 },
    };
    const cycle = simulateCycle(
      free,
      arcWork({ electrodePrice: 0, power: 0, air: 0 }),
      costPracticeOf(free),
      1,
    );
    expect(cycle.cost.p90).toBe(0);
    expect(cycle.partOf.labour.share).toBe(0);
    expect(cycle.time.p50).toBeGreaterThan(0);
  });

  it('widens with the spreads of the job', () => {
    const narrow = costJob('after:\n  spread: { least: 95 %, most: 105 % }\n');
    const wide = costJob('after:\n  spread: { least: 50 %, most: 300 %, refill: { most: 400 % } }\n');
    const of = (job: typeof narrow) => simulateCycle(job, arcWork(), costPracticeOf(job), 2).cost;
    expect(of(wide).p90 / of(wide).p50).toBeGreaterThan(of(narrow).p90 / of(narrow).p50);
    expect(of(wide).p50).toBeGreaterThan(of(narrow).p50);
  });
});
