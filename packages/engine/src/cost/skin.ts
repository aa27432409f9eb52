import { refillOf } from './after-work.ts';
import type { GrooveSection } from './groove-section.ts';
import type { CostPractice } from './practice.ts';

/** What grinding the skin off takes, and what it adds to the refill of the whole seam. */
export interface SkinOff {
  /** Ground off the face everywhere [m]. */
  readonly allowance: number;
  /** Section as gouged [m2]. */
  readonly gouged: number;
  /** Section after grinding [m2]. */
  readonly ground: number;
  /** Weld metal for the whole seam, cap included [kg]. */
  readonly weldMetal: number;
  /** What of it the grinding adds [kg]. */
  readonly addedMetal: number;
}

/**
 * What grinding the skin off takes, and what it adds to the refill of the whole seam.
 *
 * @param section - the median groove [record], width > 0, depth >= 0
 * @param practice - how the job cleans, grinds and welds [record], from `costPracticeOf`
 * @returns sections and weld metal [record]
 * @source geometry, as groundArea
 * @example
 * const section = { areaPerLength: 104.5e-6, topWidth: 0.012, depth: 0.01, seamLength: 1 };
 * skinOff(section, { skinAllowance: 0, cap: { width: 0, height: 0 } }).allowance // => 0
 */
export function skinOff(section: GrooveSection, practice: CostPractice): SkinOff {
  const { area, weldMetal } = refillOf(section, practice);
  const unground = refillOf(section, { ...practice, skinAllowance: 0 });
  return {
    allowance: practice.skinAllowance,
    gouged: section.areaPerLength,
    ground: area,
    weldMetal,
    addedMetal: weldMetal - unground.weldMetal,
  };
}
