import type { KitElectrode } from '../job/index.ts';
import type { Limit } from '../limit/index.ts';
import type { Sentence, StatedUnit } from '../quantity/index.ts';
import type { Chances } from './chance.ts';
import type { Pattern } from './pattern.ts';
import type { AskReason } from './reading-table.ts';

/** Percentiles of a predicted quantity, in its SI unit. */
export interface Percentiles {
  /** 5th percentile [SI unit of the quantity]. */
  readonly p05: number;
  /** Median [SI unit of the quantity]. */
  readonly p50: number;
  /** 95th percentile [SI unit of the quantity]. */
  readonly p95: number;
}

/** Mean, median and 90th percentile over the shops, in the SI unit of the quantity. */
export interface Expectation {
  /** Mean [SI unit of the quantity]. */
  readonly mean: number;
  /** Median [SI unit of the quantity]. */
  readonly p50: number;
  /** 90th percentile [SI unit of the quantity]. */
  readonly p90: number;
}

/** How a plan learns of the shop while it is run: any of them may be combined. */
export type WayName = 'blind' | 'trial' | 'run_in' | 'layers';

/** One run of the torch along the seam, or along a stretch of it; SI. */
export interface PassOutcome {
  /** Order in which it is run, from 1 [-]. */
  readonly number: number;
  /** Layer, from 1 [-]. */
  readonly layer: number;
  /** Track, from 1 [-]. */
  readonly track: number;
  /** Offset of the track from the groove's centre line [m]. */
  readonly offset: number;
  /** Stretch of the seam that it runs, from its start; run-outs lie outside [m]. */
  readonly from: number;
  /** End of that stretch [m]. */
  readonly to: number;
  /** Current [A]. */
  readonly current: number;
  /** Arc voltage [V]. */
  readonly voltage: number;
  /** Push angle [rad]. */
  readonly pushAngle: number;
  /** Travel; where a table sets it, that for the middle reading [m/s]. */
  readonly travel: number;
  readonly setByGauge: boolean;
  /** What this pass alone takes off [m]. */
  readonly depth: Percentiles;
  /** Wait between arc and travel at the start [s]. */
  readonly dwell: number;
}

/** One row of a table: a reading, what to do, and what to expect; SI. */
export interface RowOutcome {
  /** Readings from here on [m]. */
  readonly from: number;
  /** Up to but not including there; undefined: no upper end [m]. */
  readonly to: number | undefined;
  readonly action: 'run' | 'done' | 'ask';
  /** Why to ask; undefined unless the action is `ask`. */
  readonly reason?: AskReason | undefined;
  /** Whether every reading of the row lies inside what the drawing asks for, the trial's or the run-in's never. */
  readonly inBand: boolean;
  /** Travel of what is run next; undefined unless the action is `run` [m/s]. */
  readonly travel: number | undefined;
  /** After a run-in, travel that deepens its stretch at the end [m/s]. */
  readonly deepenTravel: number | undefined;
  /** The travel over that of the pass before on the same track, after a stop [-]. */
  readonly travelFactor: number | undefined;
  /** Mean depth of the groove to expect in the end; where nothing is run, the depth that is there [m]. */
  readonly expect: Percentiles;
  /** Chance, with this reading, that the groove ends too shallow somewhere [-]. */
  readonly tooShallow: number;
  /** Chance that it ends too deep somewhere [-]. */
  readonly tooDeep: number;
}

/** A trial beside the seam, or a run-in on its first stretch. */
export interface TryoutOutcome {
  readonly kind: 'trial' | 'run_in';
  readonly on: 'scrap' | 'run_on' | 'seam';
  /** Length of the cut [m]. */
  readonly length: number;
  /** Current it is cut with [A]. */
  readonly current: number;
  /** Travel it is cut with [m/s]. */
  readonly travel: number;
  /** Depth of its cut [m]. */
  readonly depth: Percentiles;
  /** Where its stations lie, from its start [m]. */
  readonly stations: readonly number[];
  /** Standard deviation of one gauge reading [m]. */
  readonly readingSd: number;
  readonly table: readonly RowOutcome[];
}

/** A stop to measure the groove before the next layer. */
export interface StopOutcome {
  /** The stop comes after this layer [-]. */
  readonly afterLayer: number;
  /** Where the stations lie, from the start of the seam [m]. */
  readonly stations: readonly number[];
  /** Standard deviation of one reading [m]. */
  readonly readingSd: number;
  readonly table: readonly RowOutcome[];
}

/** Where an electrode runs out. */
export interface ChangeOutcome {
  /** Number of the pass [-]. */
  readonly pass: number;
  /** Place from the start of the seam at the median wear [m]. */
  readonly at: number;
}

/** Where the doubt about the finished depth comes from, as shares of the variance of its logarithm. */
export interface Doubt {
  /** What is not known of the shop [-]. */
  readonly family: number;
  /** What is common to one job [-]. */
  readonly job: number;
  /** What differs from pass to pass [-]. */
  readonly pass: number;
  /** What varies along the seam [-]. */
  readonly seam: number;
  /** What the gauge adds [-]. */
  readonly gauge: number;
}

/** What could be measured, or measured better, and what that is worth on this job. */
export interface MeasuringWorth {
  readonly what: 'trial' | 'trial_known' | 'station' | 'finer_gauge' | 'longer_trial';
  /** Money saved on the mean; not below 0 [currency]. */
  readonly cost: number;
  /** Time saved on the mean; not below 0 [s]. */
  readonly time: number;
}

/** The predicted floor across the seam; lists of equal length [m]. */
export interface SectionOutcome {
  /** Offsets from the centre line [m]. */
  readonly offset: readonly number[];
  /** 5th percentile of the depth at each [m]. */
  readonly p05: readonly number[];
  /** Median depth at each [m]. */
  readonly p50: readonly number[];
  /** 95th percentile at each [m]. */
  readonly p95: readonly number[];
}

/** A whole set-up in SI, with the kit's own electrode: what to run, what to expect, how sure it is. */
export interface PlanOutcome {
  readonly ways: readonly WayName[];
  /** Another plan found is at least as good in time, cost and heat. */
  readonly dominated: boolean;
  readonly electrode: KitElectrode;
  readonly pattern: Pattern;
  /** Layers on top of each other [-]. */
  readonly layers: number;
  /** Length each pass runs, run-outs included [m]. */
  readonly passLength: number;
  readonly passes: readonly PassOutcome[];
  /** Deepest point along the seam, and the shallowest where the depth must be reached [m]. */
  readonly floorDepth: Percentiles;
  readonly leastDepth: Percentiles;
  readonly width: Percentiles;
  /** Radius fitted to the lowest arc, median section [m]. */
  readonly rootRadius: number;
  /** Side wall against the vertical, median section [rad]. */
  readonly wallAngle: number;
  /** Height of the ridge between tracks, median section [m]. */
  readonly cuspHeight: number;
  /** Plate left under the deepest point. */
  readonly ligament: {
    /** 5th percentile [m]. */
    readonly p05: number;
    /** Median [m]. */
    readonly p50: number;
  };
  readonly chances: Chances;
  readonly arcTime: Expectation;
  readonly jobTime: Expectation;
  readonly cost: Expectation;
  readonly wholeCost: Expectation;
  readonly electrodesUsed: Expectation;
  readonly currency: string;
  /** Arc energy of the whole job, median [J]. */
  readonly arcEnergy: number;
  /** Area of the median section [m2]. */
  readonly removed: number;
  /** Length left ungouged if the arc goes out once [m]. */
  readonly lossLength: number;
  readonly tryout: TryoutOutcome | undefined;
  readonly stops: readonly StopOutcome[];
  readonly changes: readonly ChangeOutcome[];
  readonly limits: readonly Limit[];
  readonly section: SectionOutcome;
  readonly doubt: Doubt;
  /** Only for the plan itself, not for its alternatives. */
  readonly worthMeasuring: readonly MeasuringWorth[];
}

/** One constraint that stands in the way, and the least change that would free it. */
export interface Binding {
  /** Identifier of the limit or chance constraint. */
  readonly constraint: string;
  /** What the best set-up asks for, in `unit` [see unit]. */
  readonly demand: number;
  /** What there is, in `unit` [see unit]. */
  readonly limit: number;
  readonly unit: StatedUnit;
  /** The least change that frees it, in words. */
  readonly remedy: Sentence;
  /** Whether the job was planned with that change, so that it alone frees it. */
  readonly frees: boolean;
}

/** Why there is no plan: a result, not an error. */
export interface Refusal {
  /** One sentence for the person who asked. */
  readonly summary: Sentence;
  readonly binding: readonly Binding[];
}
