import type { RepairPreheat } from '../../heat/index.ts';
import type { SetAsideReason } from './check-reading.ts';
import type { DepthBand, SeamVerdict, Stretch } from './judge-seam.ts';
import type { NextStations } from './next-station.ts';
import type { SeamRepair } from './recut.ts';
import type { SeamSpread } from './seam-states.ts';

/** A depth at a place, gauged or scanned; SI. */
export interface SeamGauged {
  /** Place along the seam [m]. */
  readonly at: number;
  /** Depth [m]. */
  readonly depth: number;
  /** Standard uncertainty [m]. */
  readonly u: number;
  /** Width at the same place; left out where it was not measured. */
  readonly width?: {
    /** Width at the surface [m]. */
    readonly value: number;
    /** Standard uncertainty [m]. */
    readonly u: number;
  };
  /** Track across the groove that it was read in, from 1; left out where nobody said [-]. */
  readonly track?: number;
  /** Pass after which it was read, where others were still to come; left out: all were done [-]. */
  readonly afterPass?: number;
  readonly from: 'gauge' | 'scan';
  /** Whether the gauge failed its check [-]. */
  readonly gaugeFailed?: boolean;
  /** File that it stands in. */
  readonly file: string;
  /** Row of that file, from 1; null for a scan [-]. */
  readonly row: number | null;
  /** Recuts done before it was measured; left out: none [-]. */
  readonly afterRecut?: number;
}

/** A seam as prediction and readings together have it; SI. */
export interface SeamOutcome {
  /** The worst of its stretches. */
  readonly verdict: SeamVerdict;
  /** Plate left under the groove, judged by itself. */
  readonly remaining: { readonly verdict: SeamVerdict; readonly stretches: readonly Stretch[] };
  readonly width: SeamWidth;
  /** Spread of ln depth about the prediction, before the readings and after them. */
  readonly spread: { readonly before: SeamSpread; readonly after: SeamSpread };
  /** What the curve is without readings. */
  readonly prediction: 'plan' | 'run';
  readonly curve: readonly CurvePlace[];
  readonly band: DepthBand;
  /** Thickness of the plate [m]. */
  readonly thickness: number;
  /** Least plate left under the groove [m]. */
  readonly ligamentLeast: number;
  readonly readings: readonly JudgedReading[];
  readonly stretches: readonly Stretch[];
  /** The decision rule, by name. */
  readonly rule: string;
  readonly next: NextStations;
  /** Unit of the risk: the currency of the job, or m of groove. */
  readonly riskUnit: string;
  readonly recuts: readonly StretchRecut[];
  readonly setting: RecutSetting;
  /** Readings that stand apart from all around them, each taken for a fault at its place. */
  readonly apart: readonly SeamGauged[];
  /** Whether most readings are far from what was predicted. */
  readonly isFar: boolean;
}

/** What was said of the seam before a recut. */
export interface SeamPast {
  /** Recuts done until then [-]. */
  readonly afterRecut: number;
  readonly seam: Pick<SeamOutcome, 'verdict' | 'stretches' | 'readings'>;
}

/** The width along a seam; SI. */
export interface SeamWidth {
  /** The worst of its stretches. */
  readonly verdict: SeamVerdict;
  /** Widths that were measured and count [-]. */
  readonly readings: number;
  /** Widths that a wrong unit or a slipped decimal point explains, which do not count [-]. */
  readonly setAside: number;
  readonly band: DepthBand;
  readonly stretches: readonly Stretch[];
  /** At each place of the curve. */
  readonly curve: readonly CurvePlace['depth'][];
}

/** The depth at one place with its 90 % interval; SI. */
export interface CurvePlace {
  /** Place along the seam [m]. */
  readonly at: number;
  readonly depth: {
    /** 5th percentile [m]. */
    readonly p05: number;
    /** Median [m]. */
    readonly p50: number;
    /** 95th percentile [m]. */
    readonly p95: number;
  };
}

/** A reading, and why it is not used. */
export interface JudgedReading {
  readonly reading: SeamGauged;
  /** Null where it is used. */
  readonly why: SetAsideReason | null;
  /** Depth that it would be then; null where nothing is known [m]. */
  readonly wouldBe: number | null;
}

/** What mends a stretch. */
export interface StretchRecut {
  /** Where the stretch begins [m]. */
  readonly from: number;
  /** Where it ends [m]. */
  readonly to: number;
  readonly recut: SeamRepair;
  /** Plate left at the deepest place of it, a pass that mends it taken off. */
  readonly plateLeft: CurvePlace['depth'];
  readonly preheat: RepairPreheat;
}

/** How a repair pass is set. */
export interface RecutSetting {
  /** Current [A]. */
  readonly current: number;
  /** Arc voltage [V]. */
  readonly voltage: number;
  /** Push angle [rad]. */
  readonly pushAngle: number;
  /** Electrode diameter [m]. */
  readonly diameter: number;
}

/** Why a reading teaches nothing of how deep passes cut. */
export type NotTaught = 'several_tracks' | 'travel_unknown' | 'no_pass' | 'nothing_cut';

/** What the readings of a seam teach the shop. */
export interface SeamTeaching {
  /** Readings that teach [-]. */
  readonly readings: number;
  readonly leftOut: readonly {
    readonly why: NotTaught;
    /** Readings [-]. */
    readonly readings: number;
  }[];
  /** Entry for the shop's trials file as it is written; null where none is made. */
  readonly entry: { readonly id: string; readonly [field: string]: unknown } | null;
}
