import type { Source } from '../limit/index.ts';
import type { Sentence, StatedUnit } from '../quantity/index.ts';
import type { PlanPoint } from './convex-hull.ts';
import type { FireZone } from './fire-zone.ts';
import type { HazardWording } from './wording.ts';

/** Lower and upper end of what is not known better. */
export interface RangeOutcome {
  /** Lower end [SI unit of the quantity]. */
  readonly least: number;
  /** Upper end, which is held against the rules [SI unit of the quantity]. */
  readonly most: number;
}

/** The setting that hazards are told for. */
export interface HazardSettingOutcome {
  /** Greatest current of the plan, or of the job's source where there is no plan [A]. */
  readonly current: number;
  readonly of: 'plan' | 'source';
  /** Push angle between electrode and surface [rad]. */
  readonly pushAngle: number;
  /** Arc time of the whole job, 90th percentile; null without a plan [s]. */
  readonly arcTime: number | null;
  /** Torches burning at once [-]. */
  readonly torches: number;
  readonly place: 'open_air' | 'open_bay' | 'closed_space';
}

/** A figure to know, held against nothing. */
export interface FigureOutcome {
  readonly name: string;
  /** The figure; null where it is not known [SI unit of `unit`]. */
  readonly value: number | null;
  /** Unit in which results state it. */
  readonly unit: StatedUnit;
  readonly note: string;
  readonly source: Source;
}

/** A value held against the figure that a rule names. */
export interface RowOutcome {
  readonly id: string;
  readonly rule: string;
  /** What there is; null where it is not known [SI unit of `unit`]. */
  readonly value: number | null;
  /** What the rule names; null where it names none [SI unit of `unit`]. */
  readonly figure: number | null;
  /** Unit in which results state both. */
  readonly unit: StatedUnit;
  readonly sense: 'most' | 'least';
  readonly verdict: HazardWording;
  readonly note: string;
  readonly source: Source;
}

/** What a rule asks in words, where there is nothing to work out. */
export interface RuleOutcome {
  readonly text: Sentence;
  readonly source: Source;
}

/** One hazard: figures, values against rules, and rules in words. */
export interface SectionOutcome {
  readonly id: 'noise' | 'eyes' | 'fire' | 'fume' | 'shock' | 'field' | 'air' | 'space' | 'heat';
  readonly title: string;
  readonly figures: readonly FigureOutcome[];
  readonly rows: readonly RowOutcome[];
  readonly rules: readonly RuleOutcome[];
}

/** One task of a crew as its noise counts. */
export interface TaskOutcome {
  readonly name: string;
  /** How long it lasts in the shift [s]. */
  readonly time: number;
  /** Level at the ear; null where nothing is known of it [dBA]. */
  readonly level: RangeOutcome | null;
  readonly measured: boolean;
  /** Time that the 5 dB rule sets against the upper level [s]. */
  readonly oshaTime: number | null;
  /** Time that the 3 dB rule sets against the upper level [s]. */
  readonly nioshTime: number | null;
  readonly source: Source;
}

/** What protectors leave at the ear. */
export interface ProtectionOutcome {
  readonly worn: string;
  /** What they take off [dB]. */
  readonly attenuation: number | null;
  /** 5 dB average of the action level under them [dBA]. */
  readonly fiveDecibelAverage: number | null;
  /** L_EX,8h under them [dBA]. */
  readonly exposureLevel: number | null;
  /** Gouging a shift until 85 dBA is reached under them by the 3 dB rule [s]. */
  readonly gougingTime: number | null;
  readonly says: string;
  readonly source: Source;
}

/** Doses by both families of rules, which are never mixed in one figure. */
export interface DosesOutcome {
  readonly fiveDecibel: {
    /** Dose of levels from 90 dBA on [-]. */
    readonly pelDose: RangeOutcome;
    /** Average of that dose; null where nothing counts [dBA]. */
    readonly pelAverage: RangeOutcome | null;
    /** Dose of levels from 80 dBA on [-]. */
    readonly actionDose: RangeOutcome;
    /** Average of that dose; null where nothing counts [dBA]. */
    readonly actionAverage: RangeOutcome | null;
  } | null;
  readonly threeDecibel: {
    /** NIOSH dose [-]. */
    readonly dose: RangeOutcome;
    /** NIOSH average [dBA]. */
    readonly average: RangeOutcome;
    /** L_EX,8h [dBA]. */
    readonly exposureLevel: RangeOutcome;
  } | null;
}

/** Noise of one crew's shift. */
export interface CrewOutcome extends DosesOutcome {
  readonly name: string;
  readonly stated: boolean;
  /** People in it; null where it is not stated [-]. */
  readonly people: number | null;
  /** Length of the shift [s]. */
  readonly shift: number;
  /** What no task fills, counted as quiet [s]. */
  readonly quiet: number;
  readonly tasks: readonly TaskOutcome[];
  /** Why there are no doses; null where there are. */
  readonly missing: string | null;
  readonly protection: ProtectionOutcome;
  readonly rows: readonly RowOutcome[];
}

/** One substance of the fume, by every set of limits. */
export interface SubstanceOutcome {
  readonly name: string;
  readonly why: string;
  /** Mean over eight hours of what was measured [mg/m3]. */
  readonly measured: number | null;
  /** Highest that was measured [mg/m3]. */
  readonly highest: number | null;
  readonly limits: readonly {
    readonly set: string;
    /** Limit; null where the set does not cover it [mg/m3]. */
    readonly most: number | null;
    readonly written: string;
    readonly ceiling: boolean;
    readonly source: Source | null;
    /** Air that keeps it below its limit if all of the fume were it [m3/s]. */
    readonly flowIfAll: number | null;
    readonly verdict: HazardWording;
  }[];
}

/** Fume and gas. */
export interface FumeOutcome {
  /** The set by which air flows are worked out. */
  readonly set: string;
  readonly substances: readonly SubstanceOutcome[];
  readonly mixtures: readonly {
    readonly set: string;
    /** Additive index; null where nothing is both measured and limited [-]. */
    readonly index: number | null;
    readonly notCovered: readonly string[];
    readonly verdict: HazardWording;
  }[];
}

/** Magnetic field beside the leads. */
export interface FieldOutcome {
  /** Distance between the leads of a pair [m]. */
  readonly apart: number;
  readonly distances: readonly {
    /** Flux density [T]. */
    readonly field: number;
    readonly what: string;
    /** From a single lead [m]. */
    readonly single: number;
    /** From the nearer of two leads laid together [m]. */
    readonly pair: number;
    readonly source: Source;
  }[];
}

/** The fire zone with its outline in plan view. */
export interface FireZoneOutcome extends FireZone {
  /** Longest watch of the rules [s]. */
  readonly watch: number;
  readonly direction: string;
  readonly bothWays: boolean;
  readonly plan: 'bay' | 'seam';
  /** The seam that it lies around. */
  readonly seam: readonly PlanPoint[];
  /** Everything within the radius. */
  readonly round: readonly PlanPoint[];
  /** The same with the lobe that the jet throws ahead. */
  readonly withJet: readonly PlanPoint[];
}

/** What is over or short of a figure named. */
export interface BreachOutcome
  extends Pick<RowOutcome, 'rule' | 'value' | 'figure' | 'unit' | 'sense' | 'verdict'> {
  /** Hazard or crew that it belongs to, in words. */
  readonly of: string;
}

/** What a job asks of the people around it, in SI. */
export interface HazardOutcome {
  readonly setting: HazardSettingOutcome;
  readonly breaches: readonly BreachOutcome[];
  readonly noise: readonly CrewOutcome[];
  readonly fume: FumeOutcome;
  readonly field: FieldOutcome;
  readonly fireZone: FireZoneOutcome;
  readonly sections: readonly SectionOutcome[];
}
