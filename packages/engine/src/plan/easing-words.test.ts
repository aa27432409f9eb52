import { describe, expect, it } from 'vitest';
import { parseAmount, sentenceText } from '../quantity/index.ts';
import { processEasings } from '../removal/index.ts';
import { easingsOfGroove } from './easings-of-groove.ts';
import { easingsOfMeasuring } from './easings-of-kit.ts';
import { testJob } from './test-job.test-support.ts';

const { job } = testJob({
  groove: {
    depth: { wanted: '1/4 in', plus: '1/8 in', minus: '1/32 in' },
    width: { least: '7/16 in', most: '22 mm' },
    root_radius_least: '3/16 in',
    ligament_least: '5 mm',
  },
});
const SYSTEMS = ['metric', 'inch'] as const;
const TOLD = [...easingsOfGroove(job), ...easingsOfMeasuring(job), ...processEasings(job)].filter(
  ({ unit, steps }) => steps.length > 0 && (unit === 'mm' || unit === 'mm/min'),
);

describe('The words of an easing', () => {
  it('carry lengths and speeds', () => {
    expect(TOLD.map(({ constraint }) => constraint)).toEqual(
      expect.arrayContaining([
        'depth_plus',
        'depth_minus',
        'width_most',
        'ligament_least',
        'travel_most',
        'trial_length',
        'gauge',
      ]),
    );
  });

  it.each(TOLD)('tell in each unit at least the step that was planned: $constraint', (easing) => {
    const { unit, now, steps, words } = easing;
    const [kind, size] = unit === 'mm' ? (['length', 1e-3] as const) : (['speed', 1e-3 / 60] as const);
    for (const step of steps) {
      for (const system of SYSTEMS) {
        const text = sentenceText(words(step), system);
        const told = /\d\S* (?:\d+\/\d+ |ft \d+ )?(?:mm|m|in|ft)(?:\/min)?(?!\w)/u.exec(text)?.[0] ?? text;
        const read = parseAmount(told, kind);
        if (!read.ok) throw new Error(`${told} is no amount`);
        const beyond = (read.value / size - step) * Math.sign(step - now);
        expect(beyond, text).toBeGreaterThanOrEqual(-1e-9);
        // lengths in inches are rounded to a fraction that a tape has, to the side that frees the job
        const rounded = system === 'inch' && unit === 'mm' ? 25.4 / (step < 25.4 ? 64 : 16) : 0;
        expect(beyond, text).toBeLessThanOrEqual(Math.max(rounded, 0.002 * step));
      }
    }
  });
});
