import { moneyOf } from './after-cost.ts';
import { afterWork, refillOf } from './after-work.ts';
import { type GrooveSection, plainGrooveArea } from './groove-section.ts';
import type { CostPractice } from './practice.ts';
import { USUAL_FACTORS } from './work-factors.ts';

/** What a groove larger than planned takes more. */
export interface ExtraMetal {
  /** Deeper by [m]. */
  readonly deeper: number;
  /** Wider by [m]. */
  readonly wider: number;
  /** More weld metal over the whole seam [kg]. */
  readonly weldMetal: number;
  /** The same over what the planned groove takes [-]. */
  readonly share: number;
  /** More time of grinding and welding [s]. */
  readonly time: number;
  /** More money, in the job's currency [-]. */
  readonly cost: number;
}

/**
 * What a groove deeper and wider than planned takes more in grinding and weld metal.
 *
 * The area grows as that of a plain groove of the same depth and width does; arc time is not in it.
 *
 * @param section - the groove as planned [record], width > 0, depth > 0
 * @param practice - rates and paces [record], from `costPracticeOf`
 * @param deeper - by how much deeper [m], >= 0
 * @param wider - by how much wider [m], >= 0
 * @returns what it takes more [record]
 * @source CST-060: mass balance (derived)
 * @example
 * const section = { areaPerLength: 63.52534467e-6, topWidth: 0.014, depth: 0.006, seamLength: 1 };
 * const practice = { skinAllowance: 0, density: 7850, capShare: 0.1, efficiency: 0.9, deposition: 3.5 / 3600, operatingFactor: 0.3, grindingRate: 5e-8, cleaning: 0, inspection: 0, flush: 0, welder: 0, grinder: 0, inspector: 0, crew: 0, discs: 0, filler: 3, gas: 0, flux: 0, assumptions: [] };
 * extraMetal(section, practice, 0.001, 0.002).share // => 0.3394525732
 */
export function extraMetal(
  section: GrooveSection,
  practice: CostPractice,
  deeper: number,
  wider: number,
): ExtraMetal {
  const { topWidth, depth } = section;
  const larger: GrooveSection = {
    ...section,
    areaPerLength:
      section.areaPerLength +
      plainGrooveArea(topWidth + wider, depth + deeper) -
      plainGrooveArea(topWidth, depth),
    topWidth: topWidth + wider,
    depth: depth + deeper,
  };
  const [planned, grown] = [section, larger].map((each) => ({
    weldMetal: refillOf(each, practice).weldMetal,
    steps: afterWork(each, practice, USUAL_FACTORS),
  })) as [Taken, Taken];
  return {
    deeper,
    wider,
    weldMetal: grown.weldMetal - planned.weldMetal,
    share: grown.weldMetal / planned.weldMetal - 1,
    time: totalOf(grown, (step) => step.time) - totalOf(planned, (step) => step.time),
    cost: totalOf(grown, moneyOf) - totalOf(planned, moneyOf),
  };
}

interface Taken {
  readonly weldMetal: number;
  readonly steps: ReturnType<typeof afterWork>;
}

function totalOf({ steps }: Taken, taken: (step: Taken['steps'][number]) => number): number {
  return steps.reduce((sum, step) => sum + taken(step), 0);
}
