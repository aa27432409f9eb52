import type { StepWork } from './cycle-step.ts';
import { type GrooveSection, groundArea } from './groove-section.ts';
import type { CostPractice } from './practice.ts';
import type { WorkFactors } from './work-factors.ts';

/** What filling a groove takes. */
export interface Refill {
  /** Area to fill, after grinding [m2]. */
  readonly area: number;
  /** Weld metal, cap included [kg]. */
  readonly weldMetal: number;
  /** Filler as bought [kg]. */
  readonly filler: number;
  /** Time with the arc burning [s]. */
  readonly arcTime: number;
  /** Time of the welder [s]. */
  readonly time: number;
}

/**
 * Weld metal, filler and time that fill a groove after its skin was ground off.
 *
 * m = rho A L (1 + cap); filler = m / efficiency; arc time = m / deposition; time = arc time / operating factor.
 *
 * @param section - the groove as gouged [record], width > 0, depth >= 0
 * @param practice - deposition, efficiency, operating factor, cap, density and skin allowance [record], from `costPracticeOf`
 * @returns area, weld metal, filler and times [record]
 * @source CST-060: mass balance (derived)
 * @example
 * const section = { areaPerLength: 63.52534467e-6, topWidth: 0.014, depth: 0.006, seamLength: 1 };
 * const practice = { skinAllowance: 0, density: 7850, capShare: 0.1, efficiency: 0.9, deposition: 3.5 / 3600, operatingFactor: 0.3 };
 * refillOf(section, practice).weldMetal // => 0.5485413512
 * refillOf(section, practice).filler // => 0.6094903902
 * refillOf(section, practice).arcTime / 60 // => 9.403566021
 */
export function refillOf(
  section: GrooveSection,
  practice: Pick<
    CostPractice,
    'skinAllowance' | 'density' | 'capShare' | 'efficiency' | 'deposition' | 'operatingFactor'
  >,
): Refill {
  return refillOfArea(groundArea(section, practice.skinAllowance), section.seamLength, practice);
}

function refillOfArea(
  area: number,
  seamLength: number,
  practice: Pick<CostPractice, 'density' | 'capShare' | 'efficiency' | 'deposition' | 'operatingFactor'>,
): Refill {
  const weldMetal = practice.density * area * seamLength * (1 + practice.capShare);
  const arcTime = weldMetal / practice.deposition;
  return {
    area,
    weldMetal,
    filler: weldMetal / practice.efficiency,
    arcTime,
    time: arcTime / practice.operatingFactor,
  };
}

/** Areas of a section that the work after the arc goes by [m2]. */
export interface SectionAreas {
  /** As gouged. */
  readonly cut: number;
  /** After grinding. */
  readonly ground: number;
}

/** The areas of a groove before and after its skin was ground off. */
export function areasOf(
  section: GrooveSection,
  { skinAllowance }: Pick<CostPractice, 'skinAllowance'>,
): SectionAreas {
  return { cut: section.areaPerLength, ground: groundArea(section, skinAllowance) };
}

/** The steps that depend on the groove left behind: cleaning, grinding, inspection, refill, grinding flush. */
export function afterWork(
  section: GrooveSection,
  practice: CostPractice,
  factors: WorkFactors,
): readonly StepWork[] {
  return workOnAreas(areasOf(section, practice), section.seamLength, practice, factors);
}

/** The same from the areas of the section: each step takes so much per seam and so much per area. */
export function workOnAreas(
  { cut, ground }: SectionAreas,
  seamLength: number,
  practice: CostPractice,
  factors: WorkFactors,
): readonly StepWork[] {
  const refill = refillOfArea(ground, seamLength, practice);
  const cleaning = practice.cleaning * seamLength * factors.cleaning;
  const skin = (ground - cut) * seamLength;
  const grinding = (skin / practice.grindingRate) * factors.grinding;
  const inspection = practice.inspection * seamLength * factors.inspection;
  const welding = refill.time * factors.refill;
  const flush = practice.flush * seamLength * factors.grinding;
  const ofGrinder = (time: number): StepWork['money'] => ({
    labour: time * practice.grinder,
    discs: time * practice.discs,
  });
  return [
    { step: 'cleaning', time: cleaning, money: { labour: cleaning * practice.crew } },
    { step: 'grinding', time: grinding, money: ofGrinder(grinding) },
    { step: 'inspection', time: inspection, money: { labour: inspection * practice.inspector } },
    {
      step: 'refill',
      time: welding,
      money: {
        labour: welding * practice.welder,
        filler: refill.filler * practice.filler,
        gas_and_flux: refill.arcTime * practice.gas + refill.weldMetal * practice.flux,
      },
    },
    { step: 'flush', time: flush, money: ofGrinder(flush) },
  ];
}
