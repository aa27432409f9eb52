import type { StatedUnit } from '../quantity/index.ts';

/** How far a statement can be trusted: read in a public text, recalled, worked out, a fact of the trade, or given by the shop. */
export type Provenance = 'confirmed' | 'memory' | 'derived' | 'common practice' | 'job file';

/** Where a number or a rule comes from. */
export interface Source {
  /** Document and table or clause, or what the fact rests on. */
  readonly text: string;
  readonly provenance: Provenance;
}

/** The verdict on one limit, in the words shown to people. */
export type Verdict = 'holds' | 'tight' | 'fails';

/** How demand answers to one setting: its change in per cent for one per cent more of the setting. */
export interface Sensitivity {
  /** Name of the setting, such as `travel`. */
  readonly setting: string;
  /** Change of the demand for a change of one per cent in the setting [%]. */
  readonly demand_percent: number;
}

/** Demand against capacity, with everything needed to show and to explain it. */
export interface Limit {
  /** Identifier, such as `removal_power`; the same in every plan. */
  readonly id: string;
  /** What is limited, in words. */
  readonly title: string;
  /** What the setting asks for, in `unit` [see unit]. */
  readonly demand: number;
  /** What there is, in `unit` [see unit]. */
  readonly capacity: number;
  /** Unit of demand and capacity as shown. */
  readonly unit: StatedUnit;
  /** `most`: demand may not exceed the capacity; `least`: demand may not fall below it. */
  readonly sense: 'most' | 'least';
  readonly verdict: Verdict;
  /** A soft limit is shown but never turns a plan away. */
  readonly hard: boolean;
  readonly source: Source;
  /** What to change if it fails, in words. */
  readonly remedy: string;
  readonly sensitivity: readonly Sensitivity[];
}
