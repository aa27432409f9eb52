import type { CommissionCheck, Connection } from '../commission/index.ts';
import type { DefaultUsed } from '../document/index.ts';
import type { Issue } from '../issue/index.ts';
import type { Limit, Source } from '../limit/index.ts';
import type { AirReport } from './air-report.ts';
import type { ElectricReport } from './electric-report.ts';
import type { PlaceReport } from './place-report.ts';

/** What the kit makes of a plan: margins, loop, air, place, connections and checks. Only there where a kit was given. */
export interface SupplyReport {
  readonly kit: KitReport;
  /** The setting that everything below is computed for; null where no plan exists even without the kit. */
  readonly setting: SupplySetting | null;
  /** Pole of the electrode and who says so; null without a setting. */
  readonly polarity: {
    readonly electrode: 'electrode_positive' | 'electrode_negative';
    readonly source: Source;
  } | null;
  readonly time: KitTime;
  /** Margins of power, leads and air at the setting; the same entries stand among the plan's limits. */
  readonly limits: readonly Limit[];
  /** The electric loop at the setting; null without a setting. */
  readonly electric: ElectricReport | null;
  /** The air while the torch blows for one pass; null without a setting or where `issues` says why. */
  readonly air: AirReport | null;
  /** Where things stand in the bay; null where the kit describes no bay or `issues` says why. */
  readonly place: PlaceReport | null;
  /** What is connected from where to where; empty where the loop has no working point. */
  readonly connections: readonly Connection[];
  /** Checks before the first arc, each with the reading to expect; empty where there is no plan to run. */
  readonly checks: readonly CommissionCheck[];
  /** Parts of the kit that could not be reckoned with, and why. */
  readonly issues: readonly Issue[];
  /** What the numbers do not know of, in words. */
  readonly cautions: readonly string[];
}

/** The kit that was used. */
export interface KitReport {
  readonly title: string;
  /** Content hash of the kit as read, defaults included (SHA-256, hex). */
  readonly revision: string;
  readonly defaults_used: readonly DefaultUsed[];
}

/** The heaviest pass of the plan, or of the plan that the process alone would allow. */
export interface SupplySetting {
  /** `plan`: of the plan told; `plan_without_kit`: the kit carries no plan, so this is the one it fails. */
  readonly of: 'plan' | 'plan_without_kit';
  /** Electrode diameter [mm]. */
  readonly electrode_diameter_mm: number;
  /** Current [A]. */
  readonly current_A: number;
  /** Arc voltage [V]. */
  readonly arc_voltage_V: number;
  /** Slowest travel of the plan [mm/min]. */
  readonly travel_mm_per_min: number;
  /** Length of one pass [mm]. */
  readonly pass_length_mm: number;
  /** Passes [-]. */
  readonly passes: number;
  /** Arc time of the slowest pass, for which the torch blows without a pause [s]. */
  readonly pass_time_s: number;
}

/** Whether the kit or the process sets the time: the job planned with and without the kit's margins. */
export interface KitTime {
  /** `kit`: without the kit's margins the job would be quicker, or possible at all; `nothing`: no plan either way. */
  readonly limited_by: 'process' | 'kit' | 'nothing';
  /** Median time of the job within the kit [s]; null where the kit carries no plan. */
  readonly with_kit_s: number | null;
  /** Median time of the job by the process alone [s]; null where there is no plan at all. */
  readonly without_kit_s: number | null;
  /** Identifiers of the kit's limits that the quicker plan fails. */
  readonly binding: readonly string[];
  /** The same in one sentence. */
  readonly says: string;
}
