import type { FloorLine } from './floor-line.ts';
import type { HeatAccount, SectionPass } from './section-heat.ts';
import type { ThermalProperties } from './thermal-tables.ts';

/** One pass as it runs along the seam. */
export interface SeamPass {
  /** When the torch begins, at the start of the window [s]. */
  readonly at: number;
  /** Travel speed [m/s]. */
  readonly travel: number;
  /** How long the arc lies over a place [s]. */
  readonly duration: SectionPass['duration'];
  /** Floor after the pass, from left to right. */
  readonly floor: FloorLine;
  /** Heat given to the newly cut face per length of seam [J/m]. */
  readonly keptPerLength: number;
}

/** What lies beyond one end of the window. */
export interface SeamBeyond {
  /** Whether the seam goes on there; if not, it ends. */
  readonly seamGoesOn: boolean;
  /** Metal beyond the end of the seam; 0 is the plate's edge [m]. */
  readonly plate: number;
}

/** A stretch of seam with an end in it, or a whole short seam. */
export interface SeamEndInput {
  readonly metal: ThermalProperties;
  /** Thickness of the plate [m]. */
  readonly thickness: number;
  /** How far the plate reaches to either side; as far as the heat goes when left out [m]. */
  readonly halfWidth?: number | undefined;
  /** Temperature of the surroundings [K]. */
  readonly ambient: number;
  /** Temperature of the plate before the first pass [K]. */
  readonly start: number;
  readonly losses: 'film_and_radiation' | 'none';
  /** Length of the window along the seam [m]. */
  readonly length: number;
  readonly before: SeamBeyond;
  readonly after: SeamBeyond;
  readonly passes: readonly SeamPass[];
  /** Temperature whose reach along the surface is wanted [K]. */
  readonly past: number;
  /** End of the time simulated [s]. */
  readonly until: number;
  readonly quality: 'quick' | 'refined';
}

/** What a place of the seam went through. */
export interface SeamPlace {
  /** From the start of the window [m]. */
  readonly along: number;
  /** Highest temperature of the back face [K]. */
  readonly backFacePeak: number;
  /** Time from 800 to 500 degC at the groove's lowest place; NaN where it did not pass both [s]. */
  readonly t85: number;
  /** Width of the surface beside the groove past the temperature wanted, both sides together [m]. */
  readonly widthPast: number;
}

/** A stretch of seam through time. */
export interface SeamEndHeat {
  /** Places of the seam in the window, from its start. */
  readonly places: readonly SeamPlace[];
  /** The same from the section alone, as if the seam had no end. */
  readonly section: Omit<SeamPlace, 'along'>;
  /** Heat of the whole body [J]. */
  readonly balance: HeatAccount;
  /** Cells of the grid [-]. */
  readonly cells: number;
  /** Time steps taken [-]. */
  readonly steps: number;
  /** Sweeps over all cells [-]. */
  readonly sweeps: number;
}
