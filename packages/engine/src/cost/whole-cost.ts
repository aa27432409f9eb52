import type { Job } from '../job/index.ts';
import { MM } from '../quantity/index.ts';
import { type Refill, refillOf } from './after-work.ts';
import type { ArcWork } from './arc-work.ts';
import { type Cycle, simulateCycle } from './cycle.ts';
import { type ExtraMetal, extraMetal } from './extra-metal.ts';
import { breakEvenLength, type ComparedWay, compareWays, plannedWay, type WayTaken } from './other-way.ts';
import { type CostAssumption, type CostPractice, costPracticeOf, refillTitle } from './practice.ts';
import { type SkinOff, skinOff } from './skin.ts';

/** Larger grooves whose weld metal is told: deeper and wider by [mm]. */
const EXTRA = [
  [1, 0],
  [2, 0],
  [3, 0],
  [0, 1],
  [0, 2],
  [0, 4],
  [1, 2],
] as const;

/** Labour and overhead that published notes find in welding cost, as a share of it (CST-012). */
const LABOUR_USUAL = [0.75, 0.95] as const;

/** What is known beside job and work. */
export interface CostKnown {
  /** Whether the torch's air is known from a kit. */
  readonly air: boolean;
  /** Whether the waits for the interpass temperature are known from the heat. */
  readonly waits: boolean;
}

/** Another way to make the groove, held against the planned one. */
export interface WayOutcome extends ComparedWay {
  /** Seam from which on the planned way is the cheaper one; null where none is long enough or nothing is compared [m]. */
  readonly cheaperFrom: number | null;
}

/** Time and money of a whole job, in SI and its currency. */
export interface CostOutcome {
  readonly currency: string;
  /** Length of the seam [m]. */
  readonly seamLength: number;
  readonly cycle: Cycle;
  /** Process of the re-weld, in words. */
  readonly process: string;
  readonly refill: Refill;
  readonly skin: SkinOff;
  readonly extra: readonly ExtraMetal[];
  readonly planned: WayTaken;
  readonly ways: readonly WayOutcome[];
  readonly assumptions: readonly CostAssumption[];
  readonly cautions: readonly string[];
}

/**
 * Time and money of a whole job: set-up to refill with their scatter, what larger grooves and other ways cost.
 *
 * @param job - the job [record], from `readJob`
 * @param work - what the plan's cycle takes [record], amounts >= 0
 * @param known - which of the plan's surroundings are known [record], either
 * @returns cycle, refill, larger grooves and other ways [record]
 * @source as simulateCycle, refillOf and compareWays
 * @example
 * const work = arcWorkOfPlan(demoAnswer.basis.plan, demoJob.job, { airFlow: undefined, coolingTime: 60, hirePerDay: 0 });
 * wholeCost(demoJob.job, work, { air: false, waits: true }).extra.length // => 7
 */
export function wholeCost(job: Job, work: ArcWork, known: CostKnown): CostOutcome {
  const practice = costPracticeOf(job);
  const cycle = simulateCycle(job, work, practice, job.plan.seed);
  const planned = plannedWay(work, practice);
  const { section } = work;
  return {
    currency: job.rates.currency,
    seamLength: job.seam.length,
    cycle,
    process: refillTitle(job),
    refill: refillOf(section, practice),
    skin: skinOff(section, practice),
    extra: EXTRA.map(([deeper, wider]) => extraMetal(section, practice, deeper * MM, wider * MM)),
    planned,
    ways: waysOf(job, work, practice, planned),
    assumptions: [...practice.assumptions, ...gapsOf(job, known)],
    cautions: cautionsOf(job, cycle),
  };
}

function waysOf(job: Job, work: ArcWork, practice: CostPractice, planned: WayTaken): readonly WayOutcome[] {
  const spent = ({ cost, fixedCost }: WayTaken) => ({
    fixed: fixedCost,
    perMetre: (cost - fixedCost) / work.section.seamLength,
  });
  return compareWays(job, work, practice).map((way) => ({
    ...way,
    cheaperFrom: way.taken === undefined ? null : breakEvenLength(spent(planned), spent(way.taken)),
  }));
}

/** What is left out for want of knowing. */
function gapsOf(job: Job, known: CostKnown): readonly CostAssumption[] {
  const told: CostAssumption[] = [];
  const source = { text: 'none: not counted', provenance: 'derived' } as const;
  if (job.after.cooling_wait === undefined && !known.waits) {
    told.push({
      topic: 'Cooling waits',
      text: 'none are counted: the job states none and no heat report was taken in',
      source,
    });
  }
  if (job.after.air.price_per_m3 > 0 && job.after.air.flow === undefined && !known.air) {
    told.push({
      topic: 'Air',
      text: 'not counted: air has a price, but neither job nor kit says how much the torch takes',
      source,
    });
  }
  return told;
}

function cautionsOf(job: Job, cycle: Cycle): readonly string[] {
  const cautions = [
    'Time and money are estimates with the spreads that the job states; no price is certain and none is an offer.',
    'Steps are counted one after the other: work side by side, waiting for people or cranes, and travel are not known here.',
  ];
  if (job.rates.labour_per_hour === 0) {
    cautions.unshift('No labour rate is stated, so the largest part of the money is missing.');
    return cautions;
  }
  const { share } = cycle.partOf.labour;
  const [least, most] = LABOUR_USUAL;
  if (share < least || share > most) {
    cautions.push(
      `Labour and overhead are ${(share * 100).toFixed(0)} % of the money; published notes on welding find 75 to 95 %. Check rates and prices.`,
    );
  }
  return cautions;
}
