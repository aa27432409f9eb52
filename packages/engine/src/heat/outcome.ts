import type { Limit, Source } from '../limit/index.ts';
import type { Sentence, StatedUnit } from '../quantity/index.ts';
import type { GougingStart } from './gouging-start.ts';
import type { HeatSpan, KeptHeat } from './kept-heat.ts';
import type { HeatAccount } from './section-heat.ts';
import type { Transformation } from './transformation.ts';

/** A value that the result rests on, with where it comes from. */
export interface HeatAssumptionOutcome {
  readonly topic: string;
  readonly text: Sentence;
  readonly source: Source;
}

/** One pass as the plate feels it at the station. */
export interface HeatPassOutcome {
  /** Order in which it is run, from 1 [-]. */
  readonly number: number;
  readonly heat: KeptHeat;
  /** When the torch is at the station [s]. */
  readonly atStation: HeatSpan;
  /** Temperature beside the groove just before it [K]. */
  readonly before: HeatSpan;
  /** Wait that the interpass temperature asks for before it [s]. */
  readonly wait: HeatSpan;
}

/** One formula's cooling time. */
export interface CoolingRow {
  readonly name: string;
  /** From 800 to 500 degC; null where the formula does not apply [s]. */
  readonly t85: HeatSpan | null;
  readonly insideRange: boolean;
  readonly note: Sentence;
  readonly source: Source;
}

/** Hardness as a band over formulas and cooling times. */
export interface HardnessOutcome {
  /** Lower end, formulas' own scatter included [HV]. */
  readonly least: number;
  /** Upper end [HV]. */
  readonly most: number;
  readonly formulas: readonly {
    readonly name: string;
    /** For the slowest to the quickest cooling [HV]. */
    readonly value: HeatSpan;
    readonly source: Source;
  }[];
  /** Of the carburised film if it is left on [HV]. */
  readonly skin: number;
  readonly note: string;
}

/** A preheat by one method. */
export interface PreheatRow {
  readonly method: string;
  /** Temperature asked for; null where the method cannot be used [K]. */
  readonly temperature: number | null;
  readonly parts: readonly {
    readonly name: string;
    /** What the part adds, or its value [see unit]. */
    readonly value: number;
    readonly unit: StatedUnit;
  }[];
  readonly insideRange: boolean;
  readonly remarks: readonly Sentence[];
  readonly source: Source;
}

/** The preheats side by side. */
export interface PreheatOutcome {
  readonly methods: readonly PreheatRow[];
  readonly differences: readonly Sentence[];
  readonly gouging: GougingStart;
}

/** The end of the seam beside the section. */
export interface HeatEndsOutcome {
  /** Stretch of seam that was followed [m]. */
  readonly window: number;
  readonly wholeSeam: boolean;
  /** Highest temperature of the back face in it [K]. */
  readonly backFace: number;
  /** The same where the seam has no end [K]. */
  readonly sectionBackFace: number;
  /** Cooling times along it; null: nowhere passes both temperatures. */
  readonly t85: {
    /** Shortest [s]. */
    readonly least: number;
    /** Longest [s]. */
    readonly most: number;
  } | null;
  /** The same where the seam has no end [s]. */
  readonly sectionT85: number | null;
  /** Greatest width at the surface past Ac1, both sides together; null: metal without it [m]. */
  readonly widthPastAc1: number | null;
  /** The same where the seam has no end [m]. */
  readonly sectionWidthPastAc1: number | null;
  readonly note: Sentence;
}

/** What a plan does to the plate, in SI. */
export interface HeatOutcome {
  readonly quality: 'quick' | 'refined';
  /** Estimated error of the peak temperatures, from two grids; null for a quick look [-]. */
  readonly gridError: number | null;
  /** Place of the section from the start of the seam [m]. */
  readonly station: number;
  /** Share of the gross arc energy that the plate keeps [-]. */
  readonly keptShare: HeatSpan;
  readonly assumptions: readonly HeatAssumptionOutcome[];
  readonly passes: readonly HeatPassOutcome[];
  readonly transformation: Transformation | null;
  /** Width at the surface heated past Ac1; null: metal without it [m]. */
  readonly widthPastAc1: HeatSpan | null;
  /** The same past Ac3 [m]. */
  readonly widthPastAc3: HeatSpan | null;
  /** How far below the groove's floor Ac1 was passed [m]. */
  readonly depthPastAc1: HeatSpan | null;
  /** Highest temperature of the back face [K]. */
  readonly backFace: HeatSpan;
  /** Cooling time at the groove's final surface; null: it does not pass both temperatures [s]. */
  readonly t85: HeatSpan | null;
  readonly cooling: { readonly rows: readonly CoolingRow[]; readonly remarks: readonly Sentence[] };
  /** The band, or why there is none. */
  readonly hardness: HardnessOutcome | string;
  /** The preheats, or why there are none. */
  readonly preheat: PreheatOutcome | string;
  /** The skin ground off, from the room of cost. */
  readonly skin: {
    /** Ground off the face everywhere [m]. */
    readonly allowance: number;
    /** Section as gouged [m2]. */
    readonly gouged: number;
    /** Section after grinding [m2]. */
    readonly ground: number;
    /** Weld metal for the whole seam, cap included [kg]. */
    readonly weldMetal: number;
    /** What of it the grinding adds [kg]. */
    readonly addedMetal: number;
  };
  /** Where the energy of the section went, per length of seam [J/m]. */
  readonly balance: HeatAccount;
  readonly ends: HeatEndsOutcome | undefined;
  readonly limits: readonly Limit[];
  readonly cautions: readonly Sentence[];
}
