import type { Source } from '../limit/index.ts';

/** The air from receiver to torch through all passes of the plan. */
export interface AirReport {
  /** Pressure in the receiver for which the points are given, the lowest while the torch blows [kPa gauge]. */
  readonly receiver_kPa: number;
  /** Free air through the torch (20 degC, 1 bar, dry) [L/min]. */
  readonly torch_flow_L_per_min: number;
  /** Free air out of the receiver, other users included [L/min]. */
  readonly receiver_flow_L_per_min: number;
  /** Free air that the compressor delivers at its cut-in [L/min]. */
  readonly delivered_L_per_min: number;
  /** Least flowing pressures that are wanted. */
  readonly wanted: {
    /** Behind the regulator [kPa gauge]. */
    readonly regulator_kPa: number;
    readonly regulator_source: Source;
    /** Before the torch [kPa gauge]. */
    readonly torch_kPa: number;
    readonly torch_source: Source;
  };
  /** Flowing pressure behind the regulator, or before the torch where there is none [kPa gauge]. */
  readonly regulator_kPa: number;
  /** Flowing pressure before the torch [kPa gauge]. */
  readonly torch_kPa: number;
  /** Every point from receiver to torch. */
  readonly points: readonly AirPointReport[];
  /** Names of what is choked; `torch` is meant to be. */
  readonly choked: readonly string[];
  /** Regulator that holds its pressure; null where its supply is too low or there is none. */
  readonly regulating: string | null;
  readonly drawdown: DrawdownReport;
  /** What it takes to restore the pressure at the regulator at the cut-in; null where nothing is wanting. */
  readonly hose_changes: HoseChangesReport | null;
  readonly cautions: readonly string[];
}

/** Pressures at one point between receiver and torch. */
export interface AirPointReport {
  /** Name of the item behind which the point lies; `receiver` for the start; the last is the torch's inlet. */
  readonly behind: string;
  readonly kind: 'receiver' | 'hose' | 'pipe' | 'component' | 'regulator' | 'draw' | 'parallel';
  /** Length of the item, for hoses and pipes [m]; null for others. */
  readonly length_m: number | null;
  /** Bore of the item, for hoses and pipes [mm]; null for others. */
  readonly bore_mm: number | null;
  /** Pressure without flow [kPa gauge]. */
  readonly static_kPa: number;
  /** Pressure while the torch blows [kPa gauge]. */
  readonly flowing_kPa: number;
}

/** How the receiver goes over all passes and the pauses between them; `time_s`, `receiver_kPa` and `compressor_on` are of equal length. */
export interface DrawdownReport {
  /** Time since the torch was first opened [s]. */
  readonly time_s: readonly number[];
  /** Pressure in the receiver [kPa gauge]. */
  readonly receiver_kPa: readonly number[];
  /** Whether the compressor delivers from here on. */
  readonly compressor_on: readonly boolean[];
  readonly passes: readonly PassDrawdownReport[];
  /** Lowest pressure in the receiver while the torch blows [kPa gauge]. */
  readonly lowest_kPa: number;
  /** The same where the draw is so quick that the air cools: the lower end of what is to be expected [kPa gauge]. */
  readonly lowest_quick_kPa: number;
  /** Pressure in the receiver below which the wanted pressure is not met [kPa gauge]; null where none meets it. */
  readonly needed_kPa: number | null;
  /** Time from which the flowing pressure is too low [s]; null where that does not happen. */
  readonly below_from_s: number | null;
  /** Pass in which that is, from 1 [-]; null where that does not happen. */
  readonly below_from_pass: number | null;
  /** Length along that pass from which it is too low [mm]; null where that does not happen. */
  readonly below_from_mm: number | null;
  /** How often the compressor starts to deliver [-]. */
  readonly compressor_starts: number;
}

/** One pass on the course of the receiver. */
export interface PassDrawdownReport {
  /** When the torch opens, since it was first opened [s]. */
  readonly from_s: number;
  /** When it shuts [s]. */
  readonly to_s: number;
  /** Lowest pressure in the receiver in this pass [kPa gauge]. */
  readonly lowest_kPa: number;
}

/** The shortest list of hose changes from stock, or the best that stock can do. */
export interface HoseChangesReport {
  /** Whether the changes restore the wanted flowing pressure. */
  readonly reached: boolean;
  /** Where the pressure is wanting. */
  readonly at: 'regulator' | 'torch';
  readonly changes: readonly { readonly out: string; readonly in: string }[];
  /** Pressure in the receiver for which they were sought: its cut-in [kPa gauge]. */
  readonly receiver_kPa: number;
  /** Flowing pressure there without any change [kPa gauge]. */
  readonly before_kPa: number;
  /** Flowing pressure there after the changes [kPa gauge]. */
  readonly after_kPa: number;
  /** The same in one sentence. */
  readonly says: string;
}
