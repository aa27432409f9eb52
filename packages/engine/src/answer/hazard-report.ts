import type { HazardWording } from '../hazard/index.ts';
import type { Limit, Source } from '../limit/index.ts';
import type { StatedUnit } from '../quantity/index.ts';
import type { PointReport } from './place-report.ts';

/** Lower and upper end of what is not known better, in the unit of the key. */
export interface HazardRange {
  /** Lower end [unit of the key]. */
  readonly least: number;
  /** Upper end, which is held against the rules [unit of the key]. */
  readonly most: number;
}

/** The setting that the hazards are told for; what a plan alone can tell is null where there is none. */
export interface HazardSetting {
  /** Greatest current of the plan, or of the job's source where there is no plan [A]. */
  readonly current_A: number;
  /** Where the current comes from. */
  readonly of: 'plan' | 'source';
  /** Push angle between electrode and surface [deg]. */
  readonly push_angle_deg: number;
  /** Arc time of the whole job, 90th percentile; null without a plan [min]. */
  readonly arc_time_min: number | null;
  /** Torches burning at once [-]. */
  readonly torches: number;
  readonly place: 'open_air' | 'open_bay' | 'closed_space';
}

/** A figure to know, held against nothing. */
export interface HazardFigure {
  readonly name: string;
  /** The figure; null where it is not known, as `note` says [see unit]. */
  readonly value: number | null;
  readonly unit: StatedUnit;
  readonly note: string;
  readonly source: Source;
}

/** A value held against the figure that a rule names, in one of four wordings. */
export interface HazardRow {
  readonly id: string;
  /** What the rule is about, in words. */
  readonly rule: string;
  /** What there is; null where it is not known, as `note` says [see unit]. */
  readonly value: number | null;
  /** What the rule names; null where the source names none for this case [see unit]. */
  readonly figure: number | null;
  readonly unit: StatedUnit;
  /** Whether the rule asks for at most or at least its figure. */
  readonly sense: 'most' | 'least';
  readonly verdict: HazardWording;
  readonly note: string;
  readonly source: Source;
}

/** What is over or short of a figure named: it stands first wherever the report is shown. */
export interface HazardBreach {
  /** Hazard or crew that it belongs to, in words. */
  readonly of: string;
  readonly rule: string;
  /** What there is [see unit]. */
  readonly value: number | null;
  /** What the rule names [see unit]. */
  readonly figure: number | null;
  readonly unit: StatedUnit;
  readonly sense: 'most' | 'least';
  readonly verdict: HazardWording;
}

/** What a rule asks in words, where there is nothing to reckon. */
export interface HazardRule {
  readonly text: string;
  readonly source: Source;
}

/** One hazard: figures, values against rules, and what rules ask in words. */
export interface HazardSection {
  readonly id: 'noise' | 'eyes' | 'fire' | 'fume' | 'shock' | 'field' | 'air' | 'space' | 'heat';
  readonly title: string;
  readonly figures: readonly HazardFigure[];
  readonly rows: readonly HazardRow[];
  readonly rules: readonly HazardRule[];
}

/** One task of a crew as its noise counts. */
export interface NoiseTaskReport {
  readonly name: string;
  /** How long it lasts in the shift [min]. */
  readonly time_min: number;
  /** Level at the ear; null where nothing is known of it [dBA]. */
  readonly level_dBA: HazardRange | null;
  /** Whether the level was measured. */
  readonly measured: boolean;
  /** Time that the 5 dB rule sets against the upper level; null where no level is known [min]. */
  readonly osha_time_min: number | null;
  /** Time that the 3 dB rule of NIOSH sets against the upper level; null where no level is known [min]. */
  readonly niosh_time_min: number | null;
  /** Where the level comes from. */
  readonly source: Source;
}

/** Noise of one crew's shift by both families, which are never mixed in one figure. */
export interface CrewNoiseReport {
  readonly name: string;
  /** Whether the job states the crew, or it stands in for one with the arc time of the plan. */
  readonly stated: boolean;
  /** People in it; null where it is not stated [-]. */
  readonly people: number | null;
  /** Length of the shift [min]. */
  readonly shift_min: number;
  /** What no task fills, counted as quiet [min]. */
  readonly quiet_min: number;
  readonly tasks: readonly NoiseTaskReport[];
  /** Why there are no doses; null where there are. */
  readonly missing: string | null;
  /** 5 dB family, criterion 90 dBA; null where `missing` says why. */
  readonly five_dB: {
    /** Dose of levels from 90 dBA on [%]. */
    readonly pel_dose_percent: HazardRange;
    /** Average of that dose; null where nothing counts [dBA]. */
    readonly pel_average_dBA: HazardRange | null;
    /** Dose of levels from 80 dBA on [%]. */
    readonly action_dose_percent: HazardRange;
    /** Average of that dose; null where nothing counts [dBA]. */
    readonly action_average_dBA: HazardRange | null;
  } | null;
  /** 3 dB family, criterion 85 dBA; null where `missing` says why. */
  readonly three_dB: {
    /** NIOSH dose [%]. */
    readonly dose_percent: HazardRange;
    /** NIOSH average [dBA]. */
    readonly average_dBA: HazardRange;
    /** L_EX,8h [dBA]. */
    readonly exposure_level_dBA: HazardRange;
  } | null;
  readonly protection: {
    /** What is worn, in words. */
    readonly worn: string;
    /** What it takes off with its derating; null where its rating is missing or nothing is worn [dB]. */
    readonly attenuation_dB: number | null;
    /** 5 dB average of the action level at the ear under it; null where not known [dBA]. */
    readonly five_dB_average_dBA: number | null;
    /** L_EX,8h at the ear under it; null where not known [dBA]. */
    readonly exposure_level_dBA: number | null;
    /** Minutes of gouging a shift until 85 dBA is reached under it by the 3 dB rule, a planning figure; null where not known [min]. */
    readonly gouging_time_min: number | null;
    /** Whether it is enough, in words. */
    readonly says: string;
    readonly source: Source;
  };
  readonly rows: readonly HazardRow[];
}

/** Limit of a substance in one set. */
export interface SubstanceLimit {
  readonly set: string;
  /** Limit; null where the set does not cover it [mg/m3]. */
  readonly most_mg_per_m3: number | null;
  /** As the source writes it; empty where the set does not cover it. */
  readonly written: string;
  /** A ceiling is not averaged. */
  readonly ceiling: boolean;
  readonly source: Source | null;
  /** Air flow that keeps the substance below its limit if all of the fume were it; null where it cannot be reckoned [m3/min]. */
  readonly flow_if_all_m3_per_min: number | null;
  readonly verdict: HazardWording;
}

/** One substance of the fume. */
export interface SubstanceReport {
  readonly name: string;
  readonly why: string;
  /** Mean over eight hours of what was measured; null where nothing was [mg/m3]. */
  readonly measured_mg_per_m3: number | null;
  /** Highest that was measured; null where nothing was [mg/m3]. */
  readonly highest_mg_per_m3: number | null;
  readonly limits: readonly SubstanceLimit[];
}

/** Additive index by one set of limits. */
export interface MixtureReport {
  readonly set: string;
  /** Index over the measured substances that the set covers; null where none is [-]. */
  readonly index: number | null;
  /** Substances to reckon with that the index leaves out: not measured, or without a limit in the set. */
  readonly not_covered: readonly string[];
  readonly verdict: HazardWording;
}

/** Fume and gas. */
export interface FumeReport {
  /** The set by which air flows are reckoned. */
  readonly set: string;
  readonly substances: readonly SubstanceReport[];
  readonly mixtures: readonly MixtureReport[];
}

/** The fire zone, with its outline on the plan of the bay where a kit describes one. */
export interface FireZoneReport {
  /** All round [m]. */
  readonly radius_m: number;
  /** Ahead of the torch along its jet [m]. */
  readonly ahead_m: number;
  /** Upwards [m]. */
  readonly up_m: number;
  /** Downwards [m]. */
  readonly down_m: number;
  /** Longest watch of the rules [min]. */
  readonly watch_min: number;
  /** Where the jet throws, in words. */
  readonly direction: string;
  /** Whether the jet may throw either way along the seam. */
  readonly both_ways: boolean;
  /** `bay`: the outlines lie in the kit's bay; `seam`: around a straight seam of the job's length from the origin to the right. */
  readonly plan: 'bay' | 'seam';
  /** The seam that it lies around, in the order of travel [m]. */
  readonly seam_m: readonly PointReport[];
  /** Everything within the radius [m]. */
  readonly round_m: readonly PointReport[];
  /** The same with the lobe that the jet throws ahead [m]. */
  readonly with_jet_m: readonly PointReport[];
}

/** Magnetic field beside the leads. */
export interface FieldReport {
  /** Distance between the leads of a pair [mm]. */
  readonly apart_mm: number;
  readonly distances: readonly {
    /** Flux density [mT]. */
    readonly field_mT: number;
    readonly what: string;
    /** From a single lead [mm]. */
    readonly single_mm: number;
    /** From the nearer of two leads laid together [mm]. */
    readonly pair_mm: number;
    readonly source: Source;
  }[];
}

/** What a job asks of the people around it: figures, values against rules, and standing lists. It permits nothing. */
export interface HazardReport {
  readonly setting: HazardSetting;
  /** What is over or short of a figure named. */
  readonly breaches: readonly HazardBreach[];
  readonly noise: readonly CrewNoiseReport[];
  readonly fume: FumeReport;
  readonly field: FieldReport;
  readonly fire_zone: FireZoneReport;
  readonly sections: readonly HazardSection[];
  /** Margins of the hazards at the setting. */
  readonly limits: readonly Limit[];
  /** Shown in full wherever the report is. */
  readonly cautions: readonly string[];
  /** Conditions that stop the run. */
  readonly stop_work: readonly string[];
  readonly defers: string;
}
