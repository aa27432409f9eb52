import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planOf } from '../../testing/index.ts';
import { electrodeAt, placeText } from './place-text.ts';

const { read, plan } = planOf(
  readFileSync(new URL('../../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8'),
);
const { job } = read;

describe('placeText', () => {
  it('names the place alone while there is no plan', () => {
    expect(placeText(job, undefined, 0, 'metric')).toBe('at the start');
    expect(placeText(job, undefined, 0.0762, 'inch')).toBe('3 in from the start');
  });

  it('names the passes at a place of the seam', () => {
    expect(placeText(job, plan, 0.09, 'metric')).toMatch(/^90\.0 mm from the start: pass 1 /u);
  });

  it('gives the depth of a run-out, from the wanted depth down to nothing', () => {
    const runOut = (plan.pass_length_mm / 1000 - job.seam.length) / 2;
    expect(runOut).toBeGreaterThan(0);
    expect(placeText(job, plan, -runOut / 2, 'metric')).toMatch(/in the run-out: about 3\.0 mm deep$/u);
    expect(placeText(job, plan, job.seam.length + runOut, 'metric')).toMatch(/about 0\.0 mm deep$/u);
  });
});

describe('electrodeAt', () => {
  it('counts the changes of earlier passes and those passed on this one', () => {
    const changed = {
      ...plan,
      electrode_changes: [
        { pass: 1, at_mm: 100 },
        { pass: 2, at_mm: 40 },
        { pass: 2, at_mm: 120 },
      ],
    };
    expect(electrodeAt(changed, 1, 0.05)).toBe(1);
    expect(electrodeAt(changed, 1, 0.1)).toBe(2);
    expect(electrodeAt(changed, 2, 0.05)).toBe(3);
  });
});
