import type { HeatField } from './field.ts';
import type { FloorLine } from './floor-line.ts';
import type { ThermalProperties } from './thermal-tables.ts';

/** One pass as it goes by the section. */
export interface SectionPass {
  /** When the torch is at the section: the groove is cut and its face begins to take heat [s]. */
  readonly at: number;
  /** How long the arc lies over the section [s]. */
  readonly duration: number;
  /** Floor after the pass, from left to right. */
  readonly floor: FloorLine;
  /** Heat given to the newly cut face per length of seam [J/m]. */
  readonly keptPerLength: number;
}

/** What happens to a section. */
export interface SectionHeatInput {
  readonly metal: ThermalProperties;
  /** Thickness of the plate [m]. */
  readonly thickness: number;
  /** How far the section reaches to either side; as far as the heat goes when left out [m]. */
  readonly halfWidth?: number | undefined;
  /** Temperature of the surroundings [K]. */
  readonly ambient: number;
  /** Temperature of the plate before the first pass [K]. */
  readonly start: number;
  readonly losses: 'film_and_radiation' | 'none';
  readonly passes: readonly SectionPass[];
  /** A pass waits until the surface beside the groove is no hotter [K]. */
  readonly interpassMost?: number | undefined;
  /** End of the time simulated, waits not counted [s]. */
  readonly until: number;
  /** Times of the frames, waits not counted [s]. */
  readonly frameTimes: readonly number[];
  readonly quality: 'quick' | 'refined';
  /** Which inner loop runs; the fastest one when left out. */
  readonly form?: 'fastest' | 'typescript' | undefined;
}

/** A place of the groove's final surface. */
export interface GrooveSurfacePoint {
  /** From the groove's centre line [m]. */
  readonly offset: number;
  /** Below the plate's surface [m]. */
  readonly depth: number;
  /** Time from 800 to 500 degC; NaN where it did not pass both [s]. */
  readonly t85: number;
  /** Highest temperature [K]. */
  readonly peak: number;
}

/** Where the heat of a section went, per length of seam. */
export interface HeatAccount {
  /** Given to the newly cut faces [J/m]. */
  readonly given: number;
  /** Left with the metal cut out [J/m]. */
  readonly cutOut: number;
  /** Lost at the faces [J/m]. */
  readonly lost: number;
  /** Still there at the end [J/m]. */
  readonly stored: number;
  /** What does not add up, over what was given [-]. */
  readonly error: number;
}

/** A section through time. */
export interface SectionHeat extends HeatField {
  /** Highest temperature of each cell, across running fastest; NaN where the metal is cut out [K]. */
  readonly peak: Float32Array;
  /** Wait before each pass; infinite where a day was not enough [s]. */
  readonly waits: readonly number[];
  /** When each pass was at the section, waits counted [s]. */
  readonly startedAt: readonly number[];
  /** Surface beside the groove just before each pass, at the hotter side [K]. */
  readonly beforePass: readonly number[];
  /** The groove's final surface from left to right. */
  readonly surface: readonly GrooveSurfacePoint[];
  /** Highest temperature of the back face [K]. */
  readonly backFacePeak: number;
  readonly balance: HeatAccount;
  /** Estimated error of the peak temperature's rise, from two grids; null for a quick look [-]. */
  readonly gridError: number | null;
  /** Time steps taken [-]. */
  readonly steps: number;
  /** Sweeps over all cells [-]. */
  readonly sweeps: number;
  /** Cells of the grid [-]. */
  readonly cells: number;
  /** Which inner loop ran. */
  readonly form: 'webassembly' | 'typescript';
}
