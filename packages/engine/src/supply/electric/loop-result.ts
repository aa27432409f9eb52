import type { InputPower } from './input-power.ts';
import type { JointState } from './joint-heat.ts';
import type { TemperaturePoint } from './lead-temperature.ts';
import type { SteadyTemperature } from './steady-temperature.ts';

/** What one source does at the working point. */
export interface SourceState {
  readonly name: string;
  /** Its current [A]; none if it would be driven backwards. */
  readonly current_A: number;
  /** Its part of the whole current [-]. */
  readonly share: number;
  /** Voltage at its terminals [V]. */
  readonly terminal_voltage_V: number;
  /** Power at its terminals [W]. */
  readonly output_W: number;
  /** Minutes in ten that it may carry this current [min]. */
  readonly permissible_minutes: number;
  /** Greatest current it is rated for at all [A]. */
  readonly rated_maximum_A: number;
  /** The other sources stand above its no-load voltage, so it gives nothing. */
  readonly drops_out: boolean;
  /** It gives the greatest current of its curve; what it would do beyond is not known. */
  readonly at_last_point: boolean;
  readonly input?: InputPower;
}

/** A joint of a lead, with how much resistance its lead stands. */
export interface LeadJointState extends JointState {
  /** Resistance at which even the lower end of its estimated temperature reaches the limit of its lead [ohm]; undefined where the lead has no steady state. */
  readonly resistanceMost: number | undefined;
}

/** What one lead does at the working point. */
export interface LeadState {
  readonly name: string;
  readonly side: 'electrode' | 'work';
  /** The source that alone feeds it; not there for a lead of the whole current. */
  readonly source?: string;
  /** Size, such as `95 mm2`. */
  readonly size: string;
  /** Conductors side by side [-]. */
  readonly parallels: number;
  /** Whole current of the run [A]. */
  readonly current_A: number;
  /** Of the whole run, joints included [ohm]. */
  readonly resistance_ohm: number;
  /** Along the whole run, joints included [V]. */
  readonly drop_V: number;
  /** Conductor temperature that the working point was solved with [K]. */
  readonly temperature_K: number;
  readonly steady: SteadyTemperature;
  /** Time constant near the insulation's limit [s]. */
  readonly time_constant_s: number;
  /** Limit of the insulation [K]. */
  readonly insulation_limit_K: number;
  /** `job file` if the kit states the limit, `memory` if it is the usual 85 degC. */
  readonly insulation_limit_provenance: 'job file' | 'memory';
  /** Until this current, never stopping, brings it from ambient to the limit [s]; not there if it never does. */
  readonly time_to_limit_s?: number;
  /** Its course through the duty, where one was stated. */
  readonly duty?: {
    readonly history: readonly TemperaturePoint[];
    /** Highest temperature [K]. */
    readonly peak_K: number;
    /** When it is reached [s]. */
    readonly peak_s: number;
    /** When the limit is first reached [s]; not there if it is not. */
    readonly limit_s?: number;
    readonly beyond_range: boolean;
  };
  readonly joints: readonly LeadJointState[];
}

/** One thing that turns current into heat between terminals and arc. */
export interface LoopLoss {
  readonly lead: string;
  /** Name of the joint; not there for the lead's own copper. */
  readonly joint?: string;
  /** Voltage along it [V]. */
  readonly drop_V: number;
  /** Heat [W]; of all of them together where each conductor has such a joint. */
  readonly loss_W: number;
}

/** The electric loop where sources, leads and arc agree. */
export interface WorkingLoop {
  readonly kind: 'operating_point';
  /** Current of the arc [A]. */
  readonly current_A: number;
  /** Voltage of the arc [V]. */
  readonly arc_voltage_V: number;
  /** Where sources join: what arc and leads ask for at this current [V]. */
  readonly needed_V: number;
  /** Where sources join: what the curves give at this current [V]. */
  readonly available_V: number;
  /** Available less needed [V]; zero where the arc's voltage sets the current. */
  readonly margin_V: number;
  /** Power in the arc [W]. */
  readonly arc_W: number;
  /** Power at the terminals of all sources [W]. */
  readonly output_W: number;
  /** Heat of leads and joints [W]. */
  readonly loss_W: number;
  readonly losses: readonly LoopLoss[];
  readonly sources: readonly SourceState[];
  readonly leads: readonly LeadState[];
  /** Minutes of arc in the worst ten of the duty [min]; ten without a duty. */
  readonly arc_minutes_in_ten: number;
  /** What the numbers do not know of. */
  readonly cautions: readonly string[];
}

/** The electric loop where no working point exists, and why. No number is given then. */
export interface NoWorkingLoop {
  readonly kind: 'no_operating_point';
  readonly reason: string;
}

/** What solving a loop gives. */
export type LoopResult = WorkingLoop | NoWorkingLoop;
