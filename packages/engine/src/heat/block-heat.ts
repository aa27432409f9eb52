import type { HeatAccount } from './section-heat.ts';
import type { SurfaceLoss } from './surface-loss.ts';
import type { ThermalProperties } from './thermal-tables.ts';

/** A face of a block: left and right across, top and bottom below, front and back along. */
export type BlockFace = 'left' | 'right' | 'top' | 'bottom' | 'front' | 'back';

/** A block without a groove, and what happens to it. */
export interface BlockHeatInput {
  readonly metal: ThermalProperties;
  /** Edges of the cells across, increasing [m]. */
  readonly across: ArrayLike<number>;
  /** Edges of the cells below, increasing [m]. */
  readonly below: ArrayLike<number>;
  /** Edges of the cells along, increasing; a single cell of 1 m makes a section [m]. */
  readonly along: ArrayLike<number>;
  /** Temperature at a place at time 0 [K]. */
  readonly start: (across: number, below: number, along: number) => number;
  /** Faces that lose heat, and how; all others are closed. */
  readonly loss: (SurfaceLoss & { readonly faces: readonly BlockFace[] }) | null;
  /** Heat flux into the top face at a place and time [W/m2]. */
  readonly flux?: (across: number, along: number, time: number) => number;
  /** How long the flux stays as it is before it is looked up anew; for ever when left out [s]. */
  readonly fluxHeld?: number;
  /** Times at which temperatures are wanted, increasing [s]. */
  readonly times: readonly number[];
  /** Error allowed in a time step, root mean square of all cells [K]. */
  readonly tolerance: number;
  /** Which inner loop runs; the fastest one when left out. */
  readonly form?: 'fastest' | 'typescript';
}

/** A block through time. */
export interface BlockHeat {
  /** Middles of the cells [m]. */
  readonly across: Float64Array;
  /** Middles of the cells [m]. */
  readonly below: Float64Array;
  /** Middles of the cells [m]. */
  readonly along: Float64Array;
  /** Temperature of each cell at each time wanted, across running fastest, along slowest [K]. */
  readonly temperatures: readonly Float64Array[];
  /** Heat of the whole block [J]. */
  readonly balance: HeatAccount;
  /** Time steps taken [-]. */
  readonly steps: number;
  /** Sweeps over all cells [-]. */
  readonly sweeps: number;
  /** Which inner loop ran. */
  readonly form: 'webassembly' | 'typescript';
}
