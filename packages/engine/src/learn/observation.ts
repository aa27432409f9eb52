import type { Job, KitElectrode } from '../job/index.ts';
import type { Metal } from '../material/index.ts';
import type { PassSetting } from '../removal/index.ts';

/** A kind of work that shares its level of the depth law: metal, position, electrode kind and size band, torch. */
export interface Family {
  readonly metal: Metal['family'];
  readonly position: Job['seam']['position'];
  readonly electrode: KitElectrode['kind'];
  readonly band: SizeBand;
  /** Name of the torch, where the shop keeps its torches apart. */
  readonly torch?: string;
}

/** Electrode sizes that are learned together: up to 5/16 in, 3/8 and 1/2 in, 5/8 in and more. */
export type SizeBand = 'small' | 'middle' | 'large';

/** One gauge reading of a pass. */
export interface GaugedStation {
  /** Place along the pass [m]. */
  readonly at: number;
  /** Depth that this pass took off, those under it whose floor nobody read included [m]. */
  readonly depth: number;
  /** Standard deviation of that, where it is not the gauge's [m]. */
  readonly depthSd?: number;
  /** Width at the surface, where it was measured [m]. */
  readonly width?: number;
  /** Standard deviation of that, where it is not the gauge's [m]. */
  readonly widthSd?: number;
}

/** One pass on a flat floor, or several on top of each other gauged together, with what was gauged. */
export interface GaugedPass {
  readonly setting: PassSetting;
  /** Passes under it whose floor nobody read: the depths are of all of them together; left out: none. */
  readonly below?: readonly PassSetting[];
  readonly stations: readonly GaugedStation[];
  /** Electrode volume burnt per ampere-second, where it was measured [m3/(A s)]. */
  readonly wear?: number;
}

/** One trial or finished job of a shop: passes that share batch, day and height setting. */
export interface ShopObservation {
  /** Name of the entry in the shop's file. */
  readonly id: string;
  readonly kind: 'trial' | 'job';
  /** Day as written [ISO date]. */
  readonly date: string;
  readonly family: Family;
  /** Energy to heat and melt a unit volume of the metal [J/m3]. */
  readonly meltingEnergy: number;
  /** Standard deviation of one depth reading [m]. */
  readonly gaugeSd: number;
  readonly passes: readonly GaugedPass[];
}

/**
 * The size band of an electrode.
 *
 * @param diameter - electrode diameter [m], > 0
 * @returns small up to 5/16 in, middle for 3/8 and 1/2 in, large above [text]
 * @source judgement, no source
 * @example
 * sizeBand(0.0127) // => "middle"
 */
export function sizeBand(diameter: number): SizeBand {
  if (diameter < 8.8e-3) return 'small';
  return diameter < 14.3e-3 ? 'middle' : 'large';
}

/**
 * A family as one line of text, by which it is known in files and results.
 *
 * @param family - the family [record], any
 * @returns its name [text]
 * @source none: bookkeeping
 * @example
 * familyName({ metal: 'carbon_steel', position: 'flat', electrode: 'jointed', band: 'middle' }) // => "carbon_steel/flat/jointed-middle"
 */
export function familyName(family: Family): string {
  const { metal, position, electrode, band, torch } = family;
  return `${metal}/${position}/${electrode}-${band}${torch === undefined ? '' : `/${torch}`}`;
}
