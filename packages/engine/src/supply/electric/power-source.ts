import type { Lead } from './lead.ts';

/** Terminal voltage against current at the setting used, or at the highest one. */
export type Characteristic =
  | {
      readonly kind: 'drooping' | 'flat';
      /** Voltage without load [V]. */
      readonly no_load_voltage: number;
      /** Fall of the voltage with current [V/A]. */
      readonly slope: number;
    }
  | {
      readonly kind: 'points';
      /** From no load on: current rising or equal, voltage falling. */
      readonly points: readonly {
        /** Current [A]. */
        readonly current: number;
        /** Voltage at the terminals [V]. */
        readonly voltage: number;
      }[];
    };

/** One rating off the plate. */
export interface RatingPoint {
  /** Rated current [A]. */
  readonly current: number;
  /** Rated load voltage [V], where the plate gives it. */
  readonly voltage?: number;
  /** Share of a ten-minute period [-]. */
  readonly duty: number;
}

/** A power source as its plate and its curve describe it. */
export interface PowerSource {
  readonly name: string;
  readonly characteristic: Characteristic;
  readonly rating: readonly RatingPoint[];
  /** Rated maximum current [A], if it is above the greatest rating point. */
  readonly current_most?: number;
  /** Share of the energy drawn that reaches the terminals [-]. */
  readonly efficiency?: number;
  /** Power factor [-]. */
  readonly power_factor?: number;
  readonly mains?: {
    /** Between the lines [V]. */
    readonly voltage: number;
    /** Lines under load: single or three phase [-]. */
    readonly phases: 1 | 3;
  };
}

/** A source with the leads that only its own current passes, up to the point where sources join. */
export interface SourceBranch {
  readonly source: PowerSource;
  readonly leads?: readonly Lead[];
}
