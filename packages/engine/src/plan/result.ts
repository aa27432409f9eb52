import type { Limit } from '../limit/index.ts';
import type { StatedUnit } from '../quantity/index.ts';

/** Percentiles of a predicted quantity, in the unit of its key. */
export interface Band {
  /** 5th percentile [unit of the key]. */
  readonly p05: number;
  /** Median [unit of the key]. */
  readonly p50: number;
  /** 95th percentile [unit of the key]. */
  readonly p95: number;
}

/** Median and 90th percentile, in the unit of the key. */
export interface Spread {
  /** Median [unit of the key]. */
  readonly p50: number;
  /** 90th percentile [unit of the key]. */
  readonly p90: number;
}

/** One run of the torch along the seam. */
export interface PlanPass {
  /** Order in which it is run, from 1 [-]. */
  readonly number: number;
  /** Layer, from 1 [-]. */
  readonly layer: number;
  /** Track across the groove, from 1 [-]. */
  readonly track: number;
  /** Offset of the track from the groove's centre line [mm]. */
  readonly offset_mm: number;
  /** Current [A]. */
  readonly current_A: number;
  /** Arc voltage [V]. */
  readonly arc_voltage_V: number;
  /** Push angle between electrode and surface [deg]. */
  readonly push_angle_deg: number;
  /** Travel; where `set_by_gauge` is true, the travel for the middle reading [mm/min]. */
  readonly travel_mm_per_min: number;
  readonly set_by_gauge: boolean;
  /** What this pass alone takes off [mm]. */
  readonly depth_mm: Band;
  /** Wait between arc and travel at the start [s]. */
  readonly dwell_s: number;
}

/** One row of the table on the card: a reading and what to do about it. */
export interface GaugeRow {
  /** The row holds for readings from this depth on [mm]. */
  readonly reading_from_mm: number;
  /** up to but not including this depth [mm]; null: no upper end. */
  readonly reading_to_mm: number | null;
  /** Run the next pass, run no more passes, or stop and ask the welding engineer. */
  readonly action: 'run' | 'done' | 'ask';
  /** Travel of the next pass; null unless the action is `run` [mm/min]. */
  readonly travel_mm_per_min: number | null;
  /** Depth to expect after it [mm]. */
  readonly expected_depth_mm: Band;
  /** Share of the shops with this reading in which the groove ends deep enough, later stops included [-]. */
  readonly depth_reached: number;
  /** Share of the shops with this reading in which no point ends too deep, later stops included [-]. */
  readonly not_too_deep: number;
}

/** What a number of gauge stations buys. */
export interface StationsChoice {
  /** Number of stations [-]. */
  readonly stations: number;
  /** Chance that the depth is reached [-]. */
  readonly depth_reached: number;
  /** Chance that no point is too deep [-]. */
  readonly not_too_deep: number;
}

/** A stop to measure the groove before the next layer, with its decision table. */
export interface GaugeStop {
  /** The stop comes after this layer [-]. */
  readonly after_layer: number;
  /** Stations per track, whose mean is the reading [-]. */
  readonly stations: number;
  /** Where they lie, from the start of the seam [mm]. */
  readonly station_positions_mm: readonly number[];
  /** Standard deviation of one gauge reading [mm]. */
  readonly reading_sd_mm: number;
  readonly table: readonly GaugeRow[];
  readonly stations_choice: readonly StationsChoice[];
}

/** Where an electrode runs out. */
export interface ElectrodeChange {
  /** Number of the pass [-]. */
  readonly pass: number;
  /** Place from the start of the seam at the median wear; below 0 in the run-out before a pocket [mm]. */
  readonly at_mm: number;
}

/** The predicted floor across the seam, for the drawing and for programs; lists of equal length. */
export interface SectionBand {
  /** Offset from the centre line [mm]. */
  readonly offset_mm: readonly number[];
  /** Depth below the plate's surface, 5th percentile [mm]. */
  readonly depth_p05_mm: readonly number[];
  /** Median depth [mm]. */
  readonly depth_p50_mm: readonly number[];
  /** 95th percentile [mm]. */
  readonly depth_p95_mm: readonly number[];
}

/** A whole set-up: what to run, what to expect, how sure it is. */
export interface Plan {
  /** `blind`: run as set; `gauge_and_adjust`: measure between layers and set the next from the table. */
  readonly kind: 'blind' | 'gauge_and_adjust';
  /** Another plan found is at least as good in time, cost and heat; told for comparison only. */
  readonly dominated: boolean;
  /** Electrode diameter [mm]. */
  readonly electrode_diameter_mm: number;
  readonly electrode_kind: 'plain' | 'jointed';
  /** Tracks side by side [-]. */
  readonly tracks: number;
  /** Distance between neighbouring tracks; 0 for one track [mm]. */
  readonly track_spacing_mm: number;
  /** Layers on top of each other [-]. */
  readonly layers: number;
  /** Length each pass runs, run-outs included [mm]. */
  readonly pass_length_mm: number;
  readonly passes: readonly PlanPass[];
  /** Deepest point of the finished floor [mm]. */
  readonly floor_depth_mm: Band;
  /** Shallowest point where the depth must be reached [mm]. */
  readonly least_depth_mm: Band;
  /** Width at the plate's surface [mm]. */
  readonly width_mm: Band;
  /** Radius fitted to the lowest arc, median section [mm]. */
  readonly root_radius_mm: number;
  /** Side wall against the vertical, median section [deg]. */
  readonly wall_angle_deg: number;
  /** Height of the ridge between tracks, median section; 0 for one track [mm]. */
  readonly cusp_height_mm: number;
  /** Plate left under the deepest point [mm]. */
  readonly ligament_mm: {
    /** 5th percentile [mm]. */
    readonly p05: number;
    /** Median [mm]. */
    readonly p50: number;
  };
  readonly assurance: {
    /** Chance that the floor reaches the required depth everywhere it must [-]. */
    readonly depth_reached: number;
    /** Chance that no point is deeper than the tolerance allows [-]. */
    readonly not_too_deep: number;
    /** Chance that the least ligament is kept [-]. */
    readonly ligament_kept: number;
    /** Chance that the width at the surface lies in its band [-]. */
    readonly width_in_band: number;
  };
  readonly arc_time_s: Spread;
  /** Arc time with starts, returns, electrode changes and gauge stops [s]. */
  readonly job_time_s: Spread;
  /** Electrodes, labour and overhead over the job time, and power for the arc, in `currency`. */
  readonly cost: Spread;
  /** The same with set-up, cleaning, grinding, inspection and refill at their usual durations, in `currency`. */
  readonly whole_cost: Spread;
  /** Currency of the cost as the job names it. */
  readonly currency: string;
  readonly electrodes_used: Spread;
  /** Arc energy of the whole job, all of it, not the share the plate keeps [kJ]. */
  readonly arc_energy_kJ: number;
  /** Area of the median section: volume per length [mm3/mm]. */
  readonly removed_mm3_per_mm: number;
  /** Length left ungouged if the arc goes out once [mm]. */
  readonly loss_length_mm: number;
  readonly gauge_stops: readonly GaugeStop[];
  readonly electrode_changes: readonly ElectrodeChange[];
  readonly limits: readonly Limit[];
  readonly section: SectionBand;
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
  readonly remedy: string;
}

/** Why there is no plan: a result, not an error. */
export interface Refusal {
  /** One sentence for the person who asked. */
  readonly summary: string;
  readonly binding: readonly Binding[];
}
