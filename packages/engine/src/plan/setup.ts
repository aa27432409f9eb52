import type { KitElectrode } from '../job/index.ts';
import type { Pattern } from './pattern.ts';
import type { ReadingTable } from './reading-table.ts';

/** How one layer is set: blind, or from the reading under each track. */
export type LayerRule =
  | { readonly kind: 'set'; readonly logEnergy: number }
  | { readonly kind: 'table'; readonly table: ReadingTable; readonly stations: number };

/** A set-up ready to be run: which electrode, how many tracks, how each layer is set. */
export interface Setup {
  readonly electrode: KitElectrode;
  /** Current [A]. */
  readonly current: number;
  /** Arc voltage [V]. */
  readonly voltage: number;
  /** Push angle, from 45 deg in units of 15 deg [-]. */
  readonly angleTerm: number;
  /** Travel at specific energy 1 [m/s]. */
  readonly unitTravel: number;
  readonly pattern: Pattern;
  readonly layers: readonly LayerRule[];
}
