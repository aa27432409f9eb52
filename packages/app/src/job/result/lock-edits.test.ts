import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { editFile, jobFile } from '../../sheet/document/index.ts';
import { planOf, readGood } from '../../testing/index.ts';
import { adoptPlan, LOCK_NAMES, type LockPlace, lockValue, toggleLock } from './lock-edits.ts';

const TEXT = readFileSync(new URL('../../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8');
const { plan } = planOf(TEXT);

function after(text: string, edits: Parameters<typeof editFile>[1]): string {
  const edited = editFile(jobFile(text), edits);
  if (!edited.ok) throw new Error(edited.why);
  return edited.file.text;
}

function place(text: string): LockPlace {
  return { file: jobFile(text), locks: readGood(text).job.locks, units: 'inch' };
}

describe('toggleLock', () => {
  it('writes the plan’s value into the job and takes it out again', () => {
    for (const name of LOCK_NAMES) {
      const edits = toggleLock(plan, name, place(TEXT));
      if (lockValue(plan, name, place(TEXT)) === undefined) {
        expect(edits).toEqual([]);
        continue;
      }
      const locked = after(TEXT, edits);
      expect(place(locked).locks[name], name).toBeDefined();
      expect(after(locked, toggleLock(plan, name, place(locked)))).toBe(TEXT);
    }
  });

  it('writes amounts that are read back as the plan’s, an electrode as the kit writes it', () => {
    const locked = after(TEXT, toggleLock(plan, 'electrode_diameter', place(TEXT)));
    const { electrode_diameter = 0 } = place(locked).locks;
    expect(electrode_diameter * 1000).toBeCloseTo(plan.electrode_diameter_mm, 9);
    expect(locked).toMatch(/electrode_diameter: \d\/\d+ in\n/u);
  });
});

describe('adoptPlan', () => {
  it('holds what makes the plan different and leaves travel to the planner', () => {
    const travelLocked = after(TEXT, toggleLock(plan, 'travel', place(TEXT)));
    expect(place(travelLocked).locks.travel).toBeDefined();
    const { locks } = place(after(travelLocked, adoptPlan(plan, place(travelLocked))));
    expect(locks.travel).toBeUndefined();
    expect(locks.tracks).toBe(plan.tracks);
    expect(locks.layers).toBe(plan.layers);
    expect(locks.current).toBeCloseTo(plan.passes[0]!.current_A, 9);
  });
});
