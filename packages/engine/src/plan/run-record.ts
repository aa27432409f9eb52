import type { Course } from './make-tables.ts';
import type { Rig, Way } from './way.ts';

/** What the groove asks of every run. */
export interface RunDemand {
  /** Width about the centre line over which the depth must be reached [m]. */
  readonly zoneWidth: number;
  /** Length each pass runs [m]. */
  readonly passLength: number;
  /** Standard deviation of one gauge reading [m]. */
  readonly readingSd: number;
  /** Range of the process along the seam [m]. */
  readonly seamRange: number;
  /** Energy to heat and melt a unit volume of the metal [J/m3]. */
  readonly meltingEnergy: number;
}

/** A way with its settings and tables, ready to be run. */
export interface Setup {
  readonly rig: Rig;
  readonly way: Way;
  readonly course: Course;
}

/** What came out in every shop, one value per shop. */
export interface RunOutcomes {
  /** Deepest point anywhere along the seam [m]. */
  readonly deepest: Float64Array;
  /** Shallowest point of the zone anywhere along the seam [m]. */
  readonly shallowest: Float64Array;
  /** Depth of the deepest track, the mean along the seam [m]. */
  readonly depth: Float64Array;
  /** Width at the surface where the floor is shallowest, and where it is deepest [m]. */
  readonly widthLeast: Float64Array;
  readonly widthMost: Float64Array;
  /** Width at the surface in the middle of the seam's variation [m]. */
  readonly width: Float64Array;
  /** Time under way along the seam, without dwells [s]. */
  readonly travelTime: Float64Array;
  /** Passes run on the seam [-]. */
  readonly passes: Float64Array;
  /** Stops at which every track was gauged [-]. */
  readonly gauged: Float64Array;
  /** 1 where a table said to stop and ask before anything was cut on the seam. */
  readonly notRun: Uint8Array;
}

/** Rows that readings fell into, where they are wanted: after the tryout, and before each layer on every track. */
export interface RowsRead {
  readonly tryout: Int16Array;
  readonly stops: readonly Int16Array[];
}

/** In place of a row where nothing was read [-]. */
export const NOT_READ = -1;

/** Lists to write the rows of a set-up into. */
export function rowsFor(setup: Setup, shops: number): RowsRead {
  const list = (): Int16Array => new Int16Array(shops).fill(NOT_READ);
  return {
    tryout: list(),
    stops: Array.from({ length: setup.way.shares.length * setup.rig.pattern.tracks }, list),
  };
}
