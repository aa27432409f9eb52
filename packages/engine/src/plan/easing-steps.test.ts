import { describe, expect, it } from 'vitest';
import { parseAmount } from '../quantity/index.ts';
import { easingsOfGroove } from './easings-of-groove.ts';
import { easingsOfMachines, easingsOfMeasuring } from './easings-of-kit.ts';
import { testJob } from './test-job.test-support.ts';

const { job } = testJob({
  groove: {
    depth: { wanted: '1/4 in', plus: '1/8 in', minus: '1/32 in' },
    width: { least: '7/16 in', most: '22 mm' },
    root_radius_least: '3/16 in',
    ligament_least: '5 mm',
  },
});
const TOLD = [...easingsOfGroove(job), ...easingsOfMeasuring(job), ...easingsOfMachines(job)].filter(
  ({ steps, words }) => steps.length > 0 && / \([\d.]/u.test(words(steps[0]!)),
);

describe('The words of an easing', () => {
  it('are in both systems for lengths and speeds', () => {
    expect(TOLD.map(({ constraint }) => constraint)).toEqual(
      expect.arrayContaining(['depth_plus', 'depth_minus', 'width_most', 'ligament_least', 'travel_most']),
    );
  });

  it.each(TOLD)('tell in each unit at least the step that was planned: $constraint', (easing) => {
    const { unit, now, steps, words } = easing;
    const [kind, size] = unit === 'mm' ? (['length', 1e-3] as const) : (['speed', 1e-3 / 60] as const);
    for (const step of steps) {
      const told = /([\d.]+ \S+) \((.+?)\)/u.exec(words(step))?.slice(1);
      expect(told).toHaveLength(2);
      for (const text of told!) {
        const read = parseAmount(text, kind);
        if (!read.ok) throw new Error(`${text} is no amount`);
        const beyond = (read.value / size - step) * Math.sign(step - now);
        expect(beyond, text).toBeGreaterThanOrEqual(-1e-9);
        expect(beyond, text).toBeLessThanOrEqual(0.002 * step);
      }
    }
  });
});
