import {
  type ArcWork,
  breakEvenLength,
  COST_PARTS,
  type CostPart,
  type CostPractice,
  CYCLE_STEPS,
  type Cycle,
  type CycleStep,
  compareWays,
  costPracticeOf,
  type Estimate,
  extraMetal,
  type OtherWay,
  plannedWay,
  refillOf,
  refillTitle,
  simulateCycle,
  type WayTaken,
} from '../cost/index.ts';
import type { Job, ReadJob } from '../job/index.ts';
import type { Knowledge } from '../learn/index.ts';
import type {
  Answer,
  CostAnswer,
  CostAssumptionReport,
  CostEstimate,
  ExtraReport,
  HeatReport,
  RefillReport,
  WayReport,
} from '../result/index.ts';
import { arcWorkOfPlan } from './arc-work-of-plan.ts';

const MM = 1e-3;

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

const STEP_TITLES: Readonly<Record<CycleStep, string>> = {
  set_up: 'Set-up',
  commissioning: 'Commissioning',
  starts: 'Starts',
  arc: 'Gouging arc',
  returns: 'Returns of the carriage',
  electrode_changes: 'Electrode changes',
  gauging: 'Gauge stops',
  cooling: 'Cooling waits',
  rework: 'Rework',
  cleaning: 'Cleaning',
  grinding: 'Grinding off the skin',
  inspection: 'Inspection',
  refill: 'Refill welding',
  flush: 'Grinding the cap flush',
};

const PART_TITLES: Readonly<Record<CostPart, string>> = {
  labour: 'Labour and overhead',
  electrodes: 'Electrodes',
  power: 'Power for gouging',
  air: 'Air',
  discs: 'Grinding discs',
  filler: 'Filler',
  gas_and_flux: 'Gas and flux',
  hire: 'Hired plant',
};

const WAY_TITLES: Readonly<Record<OtherWay, string>> = {
  manual_gouging: 'Manual gouging',
  grinding: 'Grinding',
  chipping: 'Chipping',
  machining: 'Machining',
};

/** What the cost takes in beside job and plan. */
export interface CostOptions {
  /** Heat report of the same plan, for the cooling waits. */
  readonly heat?: Pick<HeatReport, 'passes'>;
  /** Hired plant by the day, in the job's currency; 0 if left out [-]. */
  readonly hirePerDay?: number;
  /** What the shop has learned, as it was planned with: changes are planned with the same. */
  readonly knowledge?: Knowledge | undefined;
}

/**
 * Reckons time and money of a whole job: set-up to refill, with their scatter, and what larger grooves and other ways cost.
 *
 * @param read - the job as read [record], from `readJob`
 * @param answer - the answer to the same job [record], from `answerJob`
 * @param options - a heat report for the cooling waits, hired plant by the day [record], may be left out
 * @returns the report, or why there is none [record]
 * @source none: composition
 * @example
 * typeof answerCost // => "function"
 */
export function answerCost(
  read: ReadJob,
  answer: Pick<Answer, 'plan' | 'refusal' | 'supply'>,
  options: CostOptions = {},
): CostAnswer {
  const { job } = read;
  const { plan } = answer;
  if (plan === undefined) {
    const why = answer.refusal === undefined ? '' : ` ${answer.refusal.summary}`;
    return { kind: 'no_plan', says: `There is no plan, so there is nothing to reckon.${why}` };
  }
  const practice = costPracticeOf(job);
  const air = answer.supply?.air;
  const airFlow = air === undefined || air === null ? undefined : air.torch_flow_L_per_min / 60_000;
  const waits = coolingOf(options.heat);
  const work = arcWorkOfPlan(plan, job, {
    airFlow,
    coolingTime: waits ?? 0,
    hirePerDay: options.hirePerDay ?? 0,
  });
  const cycle = simulateCycle(job, work, practice, job.plan.seed);
  const length = job.seam.length;
  return {
    kind: 'cost',
    currency: job.rates.currency,
    seam_length_m: length,
    trials: cycle.trials,
    seed: cycle.seed,
    time_s: estimate(cycle.time),
    cost: estimate(cycle.cost),
    cost_per_m: estimate(cycle.cost, length),
    reworked: cycle.reworked,
    steps: CYCLE_STEPS.map((step) => ({
      step,
      title: STEP_TITLES[step],
      time_s: estimate(cycle.timeOf[step].estimate),
      time_share: cycle.timeOf[step].share,
      cost: estimate(cycle.costOf[step].estimate),
      cost_share: cycle.costOf[step].share,
    })),
    items: COST_PARTS.map((part) => ({
      part,
      title: PART_TITLES[part],
      cost: estimate(cycle.partOf[part].estimate),
      cost_share: cycle.partOf[part].share,
    })),
    refill: refillReport(job, work, practice),
    extra: EXTRA.map(([deeper, wider]) => extraReport(work, practice, deeper, wider)),
    ways: wayReports(job, work, practice),
    assumptions: [...practice.assumptions, ...gaps(job, airFlow, waits)],
    cautions: cautionsOf(job, cycle),
  };
}

/** Waits of a heat report, for its middle share of heat kept. */
function coolingOf(heat: CostOptions['heat']): number | undefined {
  return heat?.passes.reduce((sum, pass) => sum + pass.wait_s.middle, 0);
}

function estimate(from: Estimate, per = 1): CostEstimate {
  return {
    p50: from.p50 / per,
    p90: from.p90 / per,
    mean: from.mean / per,
    p50_half_width: from.p50HalfWidth / per,
    p90_half_width: from.p90HalfWidth / per,
  };
}

function refillReport(job: Job, { section }: ArcWork, practice: CostPractice): RefillReport {
  const refill = refillOf(section, practice);
  const unground = refillOf(section, { ...practice, skinAllowance: 0 });
  return {
    process: refillTitle(job),
    gouged_area_mm2: section.areaPerLength / MM ** 2,
    ground_area_mm2: refill.area / MM ** 2,
    skin_allowance_mm: practice.skinAllowance / MM,
    weld_metal_kg: refill.weldMetal,
    skin_weld_metal_kg: refill.weldMetal - unground.weldMetal,
    filler_kg: refill.filler,
    arc_time_s: refill.arcTime,
    time_s: refill.time,
  };
}

function extraReport(
  { section }: ArcWork,
  practice: CostPractice,
  deeper: number,
  wider: number,
): ExtraReport {
  const extra = extraMetal(section, practice, deeper * MM, wider * MM);
  return {
    deeper_mm: deeper,
    wider_mm: wider,
    weld_metal_kg: extra.weldMetal,
    weld_metal_percent: extra.share * 100,
    time_s: extra.time,
    cost: extra.cost,
    cost_per_m: extra.cost / section.seamLength,
  };
}

function wayReports(job: Job, work: ArcWork, practice: CostPractice): readonly WayReport[] {
  const length = work.section.seamLength;
  const planned = plannedWay(work, practice);
  const spent = ({ cost, fixedCost }: WayTaken) => ({
    fixed: fixedCost,
    perMetre: (cost - fixedCost) / length,
  });
  const told = (taken: WayTaken | undefined) => ({
    groove_time_s: taken?.grooveTime ?? null,
    time_s: taken?.time ?? null,
    cost: taken?.cost ?? null,
    cost_per_m: taken === undefined ? null : taken.cost / length,
  });
  return [
    {
      way: 'planned',
      title: 'Mechanised gouging as planned',
      rate: 'planned',
      note: 'the plan at its medians, every duration at its usual value',
      source: { text: 'the plan', provenance: 'derived' },
      ...told(planned),
      planned_cheaper_from_m: null,
    },
    ...compareWays(job, work, practice).map(
      ({ way, rate, note, source, taken }): WayReport => ({
        way,
        title: WAY_TITLES[way],
        rate,
        note,
        source,
        ...told(taken),
        planned_cheaper_from_m: taken === undefined ? null : breakEvenLength(spent(planned), spent(taken)),
      }),
    ),
  ];
}

/** What is left out for want of knowing. */
function gaps(
  job: Job,
  airFlow: number | undefined,
  waits: number | undefined,
): readonly CostAssumptionReport[] {
  const told: CostAssumptionReport[] = [];
  const source = { text: 'none: not counted', provenance: 'derived' } as const;
  if (job.after.cooling_wait === undefined && waits === undefined) {
    told.push({
      topic: 'Cooling waits',
      text: 'none are counted: the job states none and no heat report was taken in',
      source,
    });
  }
  if (job.after.air.price_per_m3 > 0 && job.after.air.flow === undefined && airFlow === undefined) {
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
