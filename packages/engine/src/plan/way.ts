import type { KitElectrode } from '../job/index.ts';
import type { Pattern } from './pattern.ts';

/** What is tried, gauged and learned from before the seam is run at its setting. */
export interface Tryout {
  /** `trial`: a cut beside the seam; `run_in`: the first stretch of the seam itself, cut shallow and deepened at the end. */
  readonly kind: 'trial' | 'run_in';
  /** Length cut [m]. */
  readonly length: number;
  /** Stations whose mean is the reading [-]. */
  readonly stations: number;
}

/** How a groove is made, before any setting is solved. */
export interface Way {
  readonly tryout: Tryout | undefined;
  /** Part of the depth that each layer takes off, from the first to the last; they add up to 1 [-]. */
  readonly shares: readonly number[];
  /** Layers, counted from the last, that wait for a gauge stop [-]; less than the number of layers. */
  readonly stops: number;
  /** Stations per track at each stop [-]. */
  readonly stations: number;
}

/** Part of the depth that a run-in takes off before it is gauged [-]: safely shallow. */
export const RUN_IN_SHARE = 0.6;

/** What a person calls the way by: tried before or not, gauged between layers or not. */
export function kindOfWay({ tryout, stops }: Way): string {
  return `${tryout?.kind ?? 'none'}/${stops > 0}`;
}

/** What a job runs with, whatever the way. */
export interface Rig {
  readonly electrode: KitElectrode;
  /** Current [A]. */
  readonly current: number;
  /** Arc voltage [V]. */
  readonly voltage: number;
  /** Push angle, from 45 deg in units of 15 deg [-]. */
  readonly angleTerm: number;
  /** Travel at specific energy 1 [m/s]. */
  readonly unitTravel: number;
  /** Least and greatest ln specific energy that the travel allows [-]. */
  readonly energyRange: readonly [number, number];
  readonly pattern: Pattern;
}

/** Length of the vector of shares: how strongly the courses of several layers add up along the seam [-]. */
export function courseWeight(shares: readonly number[]): number {
  return Math.sqrt(shares.reduce((sum, share) => sum + share * share, 0));
}
