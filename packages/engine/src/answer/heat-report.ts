import type { HeatField } from '../heat/index.ts';
import type { Limit, Source } from '../limit/index.ts';
import type { Sentence } from '../quantity/index.ts';

/** What follows from little, middle and much heat kept by the plate, in the unit of the key. */
export interface HeatRange {
  /** With the least share of the heat kept [unit of the key]. */
  readonly least: number;
  /** With the middle share [unit of the key]. */
  readonly middle: number;
  /** With the greatest share [unit of the key]. */
  readonly most: number;
}

/** A value that the result rests on, with where it comes from. */
export interface HeatAssumption {
  readonly topic: string;
  readonly text: Sentence;
  readonly source: Source;
}

/** One pass as the plate feels it at the station. */
export interface HeatPass {
  /** Order in which it is run, from 1 [-]. */
  readonly number: number;
  /** Gross arc energy per length, U I / v [kJ/mm]. */
  readonly gross_kJ_per_mm: number;
  /** What leaves with the melt [kJ/mm]. */
  readonly with_melt_kJ_per_mm: number;
  /** What the plate keeps [kJ/mm]. */
  readonly kept_kJ_per_mm: HeatRange;
  /** Share of the arc power that must reach the work for what the plate keeps and what leaves with the melt [-]. */
  readonly reaching_share: HeatRange;
  /** When the torch is at the station [s]. */
  readonly at_station_s: HeatRange;
  /** Temperature beside the groove just before it [degC]. */
  readonly before_degC: HeatRange;
  /** Wait that the interpass temperature asks for before it [s]. */
  readonly wait_s: HeatRange;
}

/** One formula's cooling time beside the field's own. */
export interface CoolingFormula {
  readonly name: string;
  /** Cooling time from 800 to 500 degC; null where the formula does not apply [s]. */
  readonly t85_s: HeatRange | null;
  /** Whether heat input, thickness and start temperature are inside what the formula is for. */
  readonly inside_range: boolean;
  readonly note: Sentence;
  readonly source: Source;
}

/** One formula's hardness beside the others. */
export interface HardnessFormula {
  readonly name: string;
  /** Hardness for the slowest to the quickest cooling [HV]. */
  readonly value_HV: HeatRange;
  readonly source: Source;
}

/** Hardness as a band over formulas and cooling times, never one number. */
export interface HardnessReport {
  /** Lower end of the band, formulas' own scatter included [HV]. */
  readonly least_HV: number;
  /** Upper end of the band [HV]. */
  readonly most_HV: number;
  readonly formulas: readonly HardnessFormula[];
  /** Hardness of the carburised film if it is left on, whatever the plate [HV]. */
  readonly skin_HV: number;
  readonly note: string;
}

/** One part of a preheat temperature. */
export interface PreheatPart {
  readonly name: string;
  /** What the part adds, or its value where `unit` says so [see unit]. */
  readonly value: number;
  readonly unit: string;
}

/** A preheat by one method. */
export interface PreheatMethod {
  readonly method: string;
  /** Temperature asked for; null where the method cannot be used, as `remarks` say [degC]. */
  readonly temperature_degC: number | null;
  readonly parts: readonly PreheatPart[];
  /** Whether every input is inside what the method is for. */
  readonly inside_range: boolean;
  readonly remarks: readonly Sentence[];
  readonly source: Source;
}

/** The preheats side by side. */
export interface PreheatReport {
  readonly methods: readonly PreheatMethod[];
  /** Why the methods differ, in sentences. */
  readonly differences: readonly Sentence[];
  readonly gouging: {
    /** Temperature of the plate when gouging begins [degC]. */
    readonly temperature_degC: number;
    /** Whether the job states it; if not it is that of the re-weld. */
    readonly stated: boolean;
    readonly source: Source;
  };
}

/** The carburised skin and what taking it off costs. */
export interface SkinReport {
  /** Ground away all round the groove [mm]. */
  readonly allowance_mm: number;
  readonly source: Source;
  /** Groove's section as gouged [mm2]. */
  readonly gouged_area_mm2: number;
  /** Section after grinding [mm2]. */
  readonly ground_area_mm2: number;
  /** Added to what is filled again [%]. */
  readonly added_percent: number;
  /** Weld metal for the whole seam after grinding, cap included [kg]. */
  readonly refill_kg: number;
  /** What of it the grinding adds [kg]. */
  readonly added_kg: number;
}

/** Where the energy of one station's section went, per length [kJ/m]. */
export interface HeatBalance {
  /** Given to the plate [kJ/m]. */
  readonly given_kJ_per_m: number;
  /** Taken away with the metal cut out, as hot as it was [kJ/m]. */
  readonly cut_out_kJ_per_m: number;
  /** Lost at the faces [kJ/m]. */
  readonly lost_kJ_per_m: number;
  /** Still in the section at the end [kJ/m]. */
  readonly stored_kJ_per_m: number;
  /** What does not add up, as a share of what was given [-]. */
  readonly error: number;
}

/** The end of the seam beside the section: heat that flows along the seam as well. */
export interface HeatEnds {
  /** Stretch of seam that was followed [mm]. */
  readonly window_mm: number;
  /** Whether that is the whole seam. */
  readonly whole_seam: boolean;
  /** Highest temperature of the back face in it [degC]. */
  readonly back_face_degC: number;
  /** The same where the seam has no end [degC]. */
  readonly section_back_face_degC: number;
  /** Cooling times from 800 to 500 degC along it; null: nowhere passes both. */
  readonly t85_s: {
    /** Shortest [s]. */
    readonly least: number;
    /** Longest [s]. */
    readonly most: number;
  } | null;
  /** The same where the seam has no end [s]. */
  readonly section_t85_s: number | null;
  /** Greatest width at the surface past Ac1, both sides together; null: metal without it [mm]. */
  readonly width_past_ac1_mm: number | null;
  /** The same where the seam has no end [mm]. */
  readonly section_width_past_ac1_mm: number | null;
  readonly note: Sentence;
}

/** What the plan does to the plate, and what it asks for. */
export interface HeatReport {
  /** `quick`: a coarse look; `refined`: on a grid whose error was estimated. */
  readonly quality: 'quick' | 'refined';
  /** Estimated error of the peak temperatures, from two grids; null for a quick look [%]. */
  readonly grid_error_percent: number | null;
  /** Place of the section from the start of the seam [mm]. */
  readonly station_mm: number;
  /** Share of the gross arc energy that the plate keeps [-]. */
  readonly kept_share: HeatRange;
  readonly assumptions: readonly HeatAssumption[];
  readonly passes: readonly HeatPass[];
  readonly transformation: {
    /** Start of austenite on heating [degC]. */
    readonly ac1_degC: number;
    /** End of ferrite on heating [degC]. */
    readonly ac3_degC: number;
    readonly source: Source;
  } | null;
  /** Width at the plate's surface heated past Ac1, groove left out, both sides together; null: metal without it [mm]. */
  readonly width_past_ac1_mm: HeatRange | null;
  /** The same past Ac3 [mm]. */
  readonly width_past_ac3_mm: HeatRange | null;
  /** How far below the groove's floor Ac1 was passed [mm]. */
  readonly depth_past_ac1_mm: HeatRange | null;
  /** Highest temperature of the back face [degC]. */
  readonly back_face_degC: HeatRange;
  /** Cooling time from 800 to 500 degC at the groove's final surface, of the field; null: it does not pass both [s]. */
  readonly t85_s: HeatRange | null;
  readonly cooling_formulas: readonly CoolingFormula[];
  /** Where field and formulas part company and why, in sentences. */
  readonly cooling_remarks: readonly Sentence[];
  /** Null where composition or metal gives no hardness, as `hardness_missing` says. */
  readonly hardness: HardnessReport | null;
  readonly hardness_missing: string | null;
  /** Null for metals without such a rule, as `preheat_missing` says. */
  readonly preheat: PreheatReport | null;
  readonly preheat_missing: string | null;
  readonly skin: SkinReport;
  readonly balance: HeatBalance;
  /** Only for a refined look at a seam that has ends, and for every look at a short one. */
  readonly ends?: HeatEnds;
  readonly limits: readonly Limit[];
  readonly cautions: readonly Sentence[];
}

/** A report with the field through time, for the drawing. */
export interface HeatAnswer {
  readonly report: HeatReport;
  /** Temperatures under the section, for the middle share of heat kept. */
  readonly field: HeatField;
}
