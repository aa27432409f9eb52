/** The electric loop at a setting, with keys that carry units; or why it has no working point. */
export type ElectricReport = ElectricPoint | { readonly kind: 'no_operating_point'; readonly reason: string };

/** Sources, leads and arc where they agree. */
export interface ElectricPoint {
  readonly kind: 'operating_point';
  /** Current of the arc [A]. */
  readonly current_A: number;
  /** Voltage of the arc [V]. */
  readonly arc_voltage_V: number;
  /** Volts that arc and leads ask for where the sources join [V]. */
  readonly needed_V: number;
  /** Volts that the sources give there at this current [V]. */
  readonly available_V: number;
  /** Available less needed [V]. */
  readonly margin_V: number;
  /** Power in the arc [kW]. */
  readonly arc_kW: number;
  /** Power at the terminals of all sources [kW]. */
  readonly output_kW: number;
  /** Heat of leads and joints [W]. */
  readonly loss_W: number;
  /** Apparent power of all sources from the mains [kVA]; null where a plate does not tell. */
  readonly input_kVA: number | null;
  /** Minutes of arc in the worst ten [min]. */
  readonly arc_minutes_in_ten: number;
  readonly sources: readonly SourceReport[];
  readonly leads: readonly LeadReport[];
  /** Everything between terminals and arc that turns current into heat. */
  readonly losses: readonly LossReport[];
  /** What each wrong landing of the sense wires would do. */
  readonly sense: readonly SenseReport[];
  readonly cautions: readonly string[];
}

/** One power source at the setting. */
export interface SourceReport {
  readonly name: string;
  /** Current of this source [A]. */
  readonly current_A: number;
  /** Its part of the whole current [%]. */
  readonly share_percent: number;
  /** Voltage at its terminals [V]. */
  readonly terminal_voltage_V: number;
  /** Voltage without load [V]. */
  readonly no_load_voltage_V: number;
  /** Minutes in ten that it may carry this current [min]. */
  readonly permissible_minutes: number;
  /** Greatest current it is rated for [A]. */
  readonly rated_maximum_A: number;
  /** The other sources stand above its no-load voltage, so it gives nothing. */
  readonly drops_out: boolean;
  /** Power from the mains [kW]; null where the plate does not tell. */
  readonly input_kW: number | null;
  /** Apparent power from the mains [kVA]; null where the plate does not tell. */
  readonly input_kVA: number | null;
  /** Current in each mains line [A]; null where the plate does not tell. */
  readonly line_current_A: number | null;
}

/** One lead at the setting. */
export interface LeadReport {
  readonly name: string;
  readonly side: 'electrode' | 'work';
  /** The source that alone feeds it; null for a lead of the whole current. */
  readonly source: string | null;
  /** Size, such as `95 mm2` or `4/0 AWG`. */
  readonly size: string;
  /** Conductors side by side [-]. */
  readonly parallels: number;
  /** Length of the run [m]. */
  readonly length_m: number;
  /** Whole current of the run [A]. */
  readonly current_A: number;
  /** Resistance of the whole run, joints included [mohm]. */
  readonly resistance_mohm: number;
  /** Volts along the run, joints included [V]. */
  readonly drop_V: number;
  /** Highest conductor temperature in the duty [degC]. */
  readonly temperature_C: number;
  /** Where it would settle under a current that never stops [degC]; null where it would not settle. */
  readonly steady_C: number | null;
  /** Why it would not settle; null where it would. */
  readonly steady_says: string | null;
  /** Limit of the insulation [degC]. */
  readonly insulation_limit_C: number;
  readonly insulation_limit_provenance: 'job file' | 'memory';
  /** Time constant [s]. */
  readonly time_constant_s: number;
  /** Until a current that never stops brings it to the limit [s]; null where it never does. */
  readonly time_to_limit_s: number | null;
  readonly course: TemperatureCurve;
  readonly joints: readonly JointReport[];
}

/** Conductor temperature through the duty of the plan; lists of equal length. */
export interface TemperatureCurve {
  /** Time since the first arc [s]. */
  readonly time_s: readonly number[];
  /** Conductor temperature [degC]. */
  readonly temperature_C: readonly number[];
}

/** One joint of a lead at the setting. */
export interface JointReport {
  readonly name: string;
  /** Resistance [mohm]. */
  readonly resistance_mohm: number;
  /** Volts across it [mV]. */
  readonly drop_mV: number;
  /** Heat it makes [W]. */
  readonly heat_W: number;
  /** How much hotter than the lead beside it, within a factor of two [K]; null where the lead has no steady state. */
  readonly rise_K: number | null;
}

/** One thing between terminals and arc that turns current into heat. */
export interface LossReport {
  readonly lead: string;
  /** Name of the joint; null for the lead's own copper. */
  readonly joint: string | null;
  /** Voltage along it [V]. */
  readonly drop_V: number;
  /** Heat [W]. */
  readonly loss_W: number;
}

/** What the sense wires landed in one wrong place would do. */
export interface SenseReport {
  /** Where they would be landed, in words. */
  readonly landed: string;
  /** Leads that lie between the wires then. */
  readonly between: readonly string[];
  /** What the wires would read [V]. */
  readonly read_V: number;
  /** What the arc would have [V]. */
  readonly arc_voltage_V: number;
  /** Read less true [V]. */
  readonly error_V: number;
  /** Current then [A]. */
  readonly current_A: number;
  /** Change of the arc's length by 3 V/mm and by 1 V/mm, a rough figure from memory [mm]; negative is shorter. */
  readonly arc_length_change_mm: {
    /** Least change, with its sign [mm]. */
    readonly least: number;
    /** Greatest change, with its sign [mm]. */
    readonly most: number;
  };
  /** Change of the median depth by the removal law, a rough figure [%]; null beyond the limits of process or sources. */
  readonly depth_change_percent: number | null;
  readonly says: string;
}
