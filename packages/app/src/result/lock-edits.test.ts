import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { editFile, jobFile } from '../document/index.ts';
import { planOf, readGood } from '../testing/index.ts';
import { adoptPlan, LOCK_NAMES, lockValue, toggleLock } from './lock-edits.ts';

const TEXT = readFileSync(new URL('../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8');
const { read, plan } = planOf(TEXT);

function after(text: string, edits: Parameters<typeof editFile>[1]): string {
  const edited = editFile(jobFile(text), edits);
  if (!edited.ok) throw new Error(edited.why);
  return edited.file.text;
}

describe('toggleLock', () => {
  it('writes the plan’s value into the job and takes it out again', () => {
    for (const name of LOCK_NAMES) {
      const value = lockValue(plan, name, 'inch');
      const edits = toggleLock(read.job.locks, plan, name, 'inch');
      if (value === undefined) {
        expect(edits).toEqual([]);
        continue;
      }
      const locked = after(TEXT, edits);
      const { locks } = readGood(locked).job;
      expect(locks[name], name).toBeDefined();
      expect(after(locked, toggleLock(locks, plan, name, 'inch'))).toBe(TEXT);
    }
  });

  it('writes amounts that are read back as the plan’s', () => {
    const locked = after(TEXT, toggleLock(read.job.locks, plan, 'electrode_diameter', 'inch'));
    const { electrode_diameter = 0 } = readGood(locked).job.locks;
    expect(electrode_diameter * 1000).toBeCloseTo(plan.electrode_diameter_mm, 9);
  });
});

describe('adoptPlan', () => {
  it('holds what makes the plan different and leaves travel to the planner', () => {
    const travelLocked = after(TEXT, toggleLock(read.job.locks, plan, 'travel', 'metric'));
    const adopted = after(travelLocked, adoptPlan(readGood(travelLocked).job.locks, plan, 'metric'));
    const { locks } = readGood(adopted).job;
    expect(locks.travel).toBeUndefined();
    expect(locks.tracks).toBe(plan.tracks);
    expect(locks.layers).toBe(plan.layers);
    expect(locks.current).toBeCloseTo(plan.passes[0]!.current_A, 9);
  });
});
