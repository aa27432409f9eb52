import { describe, expect, it } from 'vitest';
import { metalOf } from '../material/index.ts';
import { learnFrom } from './knowledge.ts';
import { type JobAhead, type NextTrial, nextTrial, type TrialWindow } from './next-trial.ts';
import { FAMILY, gaugedJobs, trueShop } from './shop.test-support.ts';
import type { Knowledge } from './shop-knowledge.ts';

const JOB: JobAhead = {
  family: FAMILY,
  meltingEnergy: metalOf('carbon_steel').meltingEnergy.value,
  setting: { diameter: 0.0127, current: 850, voltage: 42, travel: 0.014, pushAngle: Math.PI / 4 },
};
const WINDOW: TrialWindow = {
  electrodes: [{ diameter: 0.0127, kind: 'jointed', least: 600, most: 950 }],
  travel: { least: 0.003, most: 0.04 },
  voltage: 42,
  pushAngle: Math.PI / 4,
  length: 0.3,
  stationsMost: 5,
  gaugeSd: 0.3e-3,
  times: { layOut: 120, start: 40, gauge: 30 },
};
const NEW: Knowledge = learnFrom({ shop: 'yard', id: 'x', observations: [] });
const KNOWN: Knowledge = learnFrom({
  shop: 'yard',
  id: 'y',
  observations: gaugedJobs(trueShop(4, 1), 8, 6),
});
const propose = (more: Partial<TrialWindow> = {}, jobs = [JOB], knowledge = NEW): NextTrial =>
  nextTrial(knowledge, jobs, { ...WINDOW, ...more });

describe('the next trial', () => {
  it('stays in the window, leaves it in 10 of 100 at most, and says so', () => {
    const trial = propose();
    expect(trial.setting.current).toBeGreaterThanOrEqual(600);
    expect(trial.setting.current).toBeLessThanOrEqual(950);
    expect(trial.leavesWindow).toBeGreaterThan(0);
    expect(trial.leavesWindow).toBeLessThanOrEqual(0.1);
  });

  it('teaches a new shop what its level is: what stays is about job, pass and seam of the trial', () => {
    const { doubt } = propose();
    expect(doubt.before).toBeGreaterThan(0.24);
    expect(doubt.after).toBeLessThan(0.14);
    expect(doubt.after).toBeGreaterThan(0.07);
  });

  it('teaches a shop that knows much little more', () => {
    const { doubt } = propose({}, [JOB], KNOWN);
    expect(doubt.before).toBeLessThan(0.08);
    expect(doubt.before ** 2 - doubt.after ** 2).toBeLessThan(0.1 * 0.25 ** 2);
  });

  it('takes more places where a reading is coarse and quick', () => {
    const coarse = propose({ gaugeSd: 2e-3, times: { ...WINDOW.times, gauge: 1 } });
    const dear = propose({ gaugeSd: 0.1e-3, times: { ...WINDOW.times, gauge: 300 } });
    expect(coarse.stations).toBe(5);
    expect(dear.stations).toBe(1);
  });

  it('is cut with the electrode of the jobs, rather than with another size', () => {
    const both = [
      ...WINDOW.electrodes,
      { diameter: 0.0159, kind: 'jointed', least: 800, most: 1140 } as const,
    ];
    expect(propose({ electrodes: both }).setting.diameter).toBe(0.0127);
    const large: JobAhead = {
      ...JOB,
      family: { ...FAMILY, band: 'large' },
      setting: { ...JOB.setting, diameter: 0.0159, current: 1000 },
    };
    expect(propose({ electrodes: both }, [large], KNOWN).setting.diameter).toBe(0.0159);
  });

  it('takes the least likely to leave the window where all are likely to', () => {
    const slow = propose({ travel: { least: 0.003, most: 0.0035 } });
    expect(slow.leavesWindow).toBeGreaterThan(0.1);
    expect(slow.setting.travel).toBeCloseTo(0.0035, 9);
  });
});
