import type { CostPart, CycleStep, OtherWay } from '../cost/index.ts';
import type { Source } from '../limit/index.ts';

/** A simulated quantity: median, 90th percentile, and how far each can be off for having only so many trials. */
export interface CostEstimate {
  /** Median [unit of the key]. */
  readonly p50: number;
  /** 90th percentile [unit of the key]. */
  readonly p90: number;
  /** Mean [unit of the key]. */
  readonly mean: number;
  /** Half width of the 95 % interval of the median's error by simulation alone [unit of the key]. */
  readonly p50_half_width: number;
  /** The same of the 90th percentile [unit of the key]. */
  readonly p90_half_width: number;
}

/** One step of the whole cycle. */
export interface CostStep {
  readonly step: CycleStep;
  readonly title: string;
  readonly time_s: CostEstimate;
  /** Its part of the mean time of the whole [-]. */
  readonly time_share: number;
  /** Money, in `currency`. */
  readonly cost: CostEstimate;
  /** Its part of the mean money of the whole [-]. */
  readonly cost_share: number;
}

/** One thing that money is spent on. */
export interface CostItem {
  readonly part: CostPart;
  readonly title: string;
  /** Money, in `currency`. */
  readonly cost: CostEstimate;
  /** Its part of the mean money of the whole [-]. */
  readonly cost_share: number;
}

/** What fills the median groove again. */
export interface RefillReport {
  /** Process of the re-weld in words. */
  readonly process: string;
  /** Section as gouged [mm2]. */
  readonly gouged_area_mm2: number;
  /** Section after the skin is ground off [mm2]. */
  readonly ground_area_mm2: number;
  /** Ground off the face [mm]. */
  readonly skin_allowance_mm: number;
  /** Weld metal, cap included [kg]. */
  readonly weld_metal_kg: number;
  /** What of the weld metal the grinding adds [kg]. */
  readonly skin_weld_metal_kg: number;
  /** Filler as bought [kg]. */
  readonly filler_kg: number;
  /** Time with the arc of the re-weld burning [s]. */
  readonly arc_time_s: number;
  /** Time of the welder at the usual pace [s]. */
  readonly time_s: number;
}

/** What a groove larger than planned takes more in grinding and weld metal. */
export interface ExtraReport {
  /** Deeper by [mm]. */
  readonly deeper_mm: number;
  /** Wider by [mm]. */
  readonly wider_mm: number;
  /** More weld metal over the whole seam [kg]. */
  readonly weld_metal_kg: number;
  /** The same over what the planned groove takes [%]. */
  readonly weld_metal_percent: number;
  /** More time at the usual pace [s]. */
  readonly time_s: number;
  /** More money, in `currency` [-]. */
  readonly cost: number;
  /** More money for one metre, in `currency` [1/m]. */
  readonly cost_per_m: number;
}

/** One way to make the groove, all work after it included, at medians and usual durations. */
export interface WayReport {
  readonly way: 'planned' | OtherWay;
  readonly title: string;
  /** Where its rate comes from: the plan, the job, a marked assumption, or nowhere. */
  readonly rate: 'planned' | 'stated' | 'assumed' | 'missing';
  readonly note: string;
  readonly source: Source;
  /** Time that making the groove takes; null where no rate is known [s]. */
  readonly groove_time_s: number | null;
  /** Time of the whole job [s]. */
  readonly time_s: number | null;
  /** Money of the whole job, in `currency` [-]. */
  readonly cost: number | null;
  /** Money for one metre, in `currency` [1/m]. */
  readonly cost_per_m: number | null;
  /** Seam from which on the planned way is the cheaper one; null where no seam is long enough or nothing is compared [m]. */
  readonly planned_cheaper_from_m: number | null;
}

/** A value that the cost rests on although the job does not state it. */
export interface CostAssumptionReport {
  readonly topic: string;
  readonly text: string;
  readonly source: Source;
}

/** Time and money of the whole job. */
export interface CostReport {
  readonly kind: 'cost';
  /** Currency of all money as the job names it. */
  readonly currency: string;
  /** Length of the seam [m]. */
  readonly seam_length_m: number;
  /** Trials of the simulation [-]. */
  readonly trials: number;
  /** Seed of its draws [-]. */
  readonly seed: number;
  /** Working time of the whole cycle, one step after the other [s]. */
  readonly time_s: CostEstimate;
  /** Money of the whole job, in `currency`. */
  readonly cost: CostEstimate;
  /** Money for one metre of seam, in `currency`. */
  readonly cost_per_m: CostEstimate;
  /** Share of the trials in which the depth was not reached at first [-]. */
  readonly reworked: number;
  readonly steps: readonly CostStep[];
  readonly items: readonly CostItem[];
  readonly refill: RefillReport;
  readonly extra: readonly ExtraReport[];
  readonly ways: readonly WayReport[];
  readonly assumptions: readonly CostAssumptionReport[];
  readonly cautions: readonly string[];
}

/** Why there is nothing to reckon. */
export interface NoCost {
  readonly kind: 'no_plan';
  readonly says: string;
}

/** Time and money of a job, or why there is none. */
export type CostAnswer = CostReport | NoCost;
