import { describe, expect, it } from 'vitest';
import { groundArea, plainFace, plainGrooveArea } from './groove-section.ts';

describe('a plain groove', () => {
  it.each([0.01, 0.016, 0.03])('goes over from segment to U without a step, %d m wide', (width) => {
    const near = 1e-9;
    expect(plainGrooveArea(width, width / 2 - near)).toBeCloseTo(plainGrooveArea(width, width / 2), 9);
    expect(plainFace(width, width / 2 - near)).toBeCloseTo(plainFace(width, width / 2), 4);
  });

  it('is a flat strip where nothing was cut', () => {
    expect(plainGrooveArea(0.02, 0)).toBe(0);
    expect(plainFace(0.02, 0)).toBe(0.02);
  });

  it('has a face no shorter than the way straight over its root', () => {
    for (const [width, depth] of [
      [0.014, 0.002],
      [0.014, 0.006],
      [0.012, 0.01],
    ] as const) {
      expect(plainFace(width, depth)).toBeGreaterThan(2 * Math.hypot(width / 2, depth));
    }
  });
});

describe('the ground section', () => {
  it('is that of a U with all its sizes grown by the allowance', () => {
    const section = {
      areaPerLength: plainGrooveArea(0.012, 0.01),
      topWidth: 0.012,
      depth: 0.01,
      seamLength: 1,
    };
    expect(groundArea(section, 0.0015)).toBeCloseTo(plainGrooveArea(0.015, 0.0115), 12);
  });

  it('is the gouged one where nothing is ground off', () => {
    const section = { areaPerLength: 8e-5, topWidth: 0.014, depth: 0.008, seamLength: 2 };
    expect(groundArea(section, 0)).toBe(8e-5);
  });
});
