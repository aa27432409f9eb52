import { describe, expect, it } from 'vitest';
import { draftOf, keepDraft } from '../../sheet/keep/index.ts';
import { MemoryStorage } from '../../testing/index.ts';
import { demoDraft, demoFaults, forgetDemo } from './demo-story.ts';

const CHANGED = { text: 'x', based_on: 0 };

describe('forgetDemo', () => {
  it('lets go of what was changed of the demo, and of nothing else', () => {
    const memory = new MemoryStorage();
    keepDraft(memory, 'new', { ...CHANGED, demo: true });
    for (const key of ['rig.new', 'readings.new', 'rig.own', 'own']) keepDraft(memory, key, CHANGED);
    forgetDemo(memory, 'penstock-seam');
    expect(['new', 'rig.new', 'readings.new'].map((key) => draftOf(memory, key))).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect(draftOf(memory, 'rig.own')).toEqual(CHANGED);
    expect(draftOf(memory, 'own')).toEqual(CHANGED);
  });

  it('leaves a job of one’s own in the place of the demo alone', () => {
    const memory = new MemoryStorage();
    for (const key of ['new', 'rig.new']) keepDraft(memory, key, CHANGED);
    forgetDemo(memory, 'penstock-seam');
    expect(draftOf(memory, 'new')).toEqual(CHANGED);
    expect(draftOf(memory, 'rig.new')).toEqual(CHANGED);
    expect(demoDraft('casting-wash')).toBe('demo.casting-wash');
  });
});

it('lets the arc go out in all passes of the demo but the first, or in the only one', () => {
  expect(demoFaults('penstock-seam', 3)).toMatch(/^arc_out\/2@3\.6 m:2 s, arc_out\/3@3\.6 m:2 s, /u);
  expect(demoFaults('penstock-seam', 2)).toMatch(/^arc_out\/2@3\.6 m:2 s, low/u);
  expect(demoFaults('penstock-seam', 1)).toMatch(/^arc_out\/1@3\.6 m:2 s, low/u);
  expect(demoFaults('casting-wash', 3)).toBeUndefined();
});
