import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FAULT_MODEL } from '../../faults/index.ts';
import { readJob } from '../../job/index.ts';
import { readKit } from '../../kit/index.ts';
import { answerJob } from '../job/answer-job.ts';

const EXAMPLES = new URL('../../../../../examples/', import.meta.url);
const textOf = (name: string): string => readFileSync(new URL(name, EXAMPLES), 'utf8');

/** What the kit makes of the seam; with short leads a wrong landing stays within the limits of process and sources. */
function supply(short = false) {
  const text = textOf('yard-kit.yaml');
  const laid = text.replace(/^( {4}length: )\d+ m$/gmu, (all, key) => (short ? `${key}2 m` : all));
  const [job, kit] = [readJob(textOf('penstock-seam.yaml')), readKit(laid)];
  if (!job.ok || !kit.ok) throw new Error('the examples are not in order');
  const report = answerJob({ job: job.value, kit: kit.value, version: 'x' }).supply;
  if (report?.electric?.kind !== 'operating_point') throw new Error('the loop has no working point');
  return { electric: report.electric, checks: report.checks };
}

/** Which way a fault moves a reading: above nothing is higher. */
function lean(observable: string): number {
  const chance = FAULT_MODEL.causes.find(({ id }) => id === 'sense_wire_misplaced')?.shows[observable];
  if (chance === undefined || !('high' in chance))
    throw new Error(`the fault does not show in ${observable}`);
  return chance.high - chance.low;
}

describe('a sense wire landed away from the arc', () => {
  const { electric, checks } = supply();

  it('shortens the arc and raises the current by supply and by the table of faults', () => {
    expect(electric.sense.length).toBeGreaterThan(1);
    for (const { error_V, arc_voltage_V, current_A, arc_length_change_mm } of electric.sense) {
      expect(error_V).toBeGreaterThan(0);
      expect(arc_voltage_V).toBeLessThan(electric.arc_voltage_V);
      expect(current_A).toBeGreaterThan(electric.current_A);
      expect(arc_length_change_mm.most).toBeLessThan(0);
    }
    expect(lean('arc_volts')).toBeLessThan(0);
    expect(lean('current')).toBeGreaterThan(0);
  });

  it('moves the depth one way in both, and no depth is told beyond the limits', () => {
    for (const { depth_change_percent, says } of electric.sense) {
      expect(says).toMatch(/too short: it may touch down/u);
      if (depth_change_percent === null) expect(says).toMatch(/beyond the limits .* do not run it so/u);
      else expect(Math.sign(depth_change_percent)).toBe(Math.sign(lean('depth')));
    }
    expect(electric.sense.some(({ depth_change_percent }) => depth_change_percent === null)).toBe(true);
    const told = supply(true).electric.sense.map(({ depth_change_percent }) => depth_change_percent);
    expect(told.some((percent) => percent !== null && percent * lean('depth') > 0)).toBe(true);
    expect(told.every((percent) => percent === null || percent * lean('depth') > 0)).toBe(true);
  });

  it('is found in commissioning by displayed volts above the measured ones, by what the supply says it is off', () => {
    const check = checks.find(({ id }) => id === 'sense_difference');
    if (check?.kind !== 'measure') throw new Error('there is no such check');
    expect(check.above[0]?.cause).toBe('sense_wire_misplaced');
    expect(check.below.map(({ cause }) => cause)).not.toContain('sense_wire_misplaced');
    const whole = Math.max(...electric.sense.map(({ error_V }) => error_V));
    expect(whole).toBeGreaterThan(check.most);
    expect(lean('sense_difference')).toBeGreaterThan(0);
    expect(checks.find(({ id }) => id === 'sense_wire')?.why).toMatch(/too short .* touch down/u);
  });
});
