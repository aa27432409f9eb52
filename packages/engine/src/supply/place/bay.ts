/** A point of the bay in plan view. */
export interface BayPoint {
  /** Distance to the right of the origin [m]. */
  readonly x: number;
  /** Distance up from the origin [m]. */
  readonly y: number;
}

/** Something with an outline in plan view. */
export interface BayArea {
  readonly id: string;
  /** Corners in their order, at least three. */
  readonly corners: readonly BayPoint[];
}

/** Where the jet of a torch that pushes along the seam throws. */
export interface BayJet {
  /** How far ahead of the torch it throws [m]. */
  readonly ahead: number;
  /** Whether the seam may be run either way, so that it throws beyond both ends. */
  readonly bothWays: boolean;
}

/** A bay in plan view: what stands where. */
export interface Bay {
  /** Corners of the bay, in their order, at least three. */
  readonly outline: readonly BayPoint[];
  /** What neither station nor leads can pass through. */
  readonly obstacles: readonly BayArea[];
  /** Where people walk: no station, and leads only under a cover. */
  readonly walkways: readonly BayArea[];
  readonly powerSource: BayPoint;
  readonly airDrop: BayPoint;
  /** Workpiece: no station on it, leads may lie over it. */
  readonly workpiece: BayArea;
  /** Seam as a line through these points. */
  readonly seam: readonly BayPoint[];
  /** Where the work return is clamped; left out: its lead is not picked here. */
  readonly workClamp?: BayPoint;
  /** Distance that the station keeps from the seam, for spatter and the carriage's travel [m]. */
  readonly keepOut: number;
  /** Distance that leads and hoses keep from the seam but where they cross it or come to it at right angles; 0 if left out [m]. */
  readonly leadClearance?: number;
  /** The jet, in which the station does not stand; left out: none is known. */
  readonly jet?: BayJet;
  /** Distance that the station keeps from walls, obstacles, walkways and workpiece [m]. */
  readonly clearance: number;
}

/** Leads of one kind in stock. */
export interface BayLead {
  readonly id: string;
  /** Length of one [m]. */
  readonly length: number;
  /** How many [-]. */
  readonly count: number;
  /** Resistance per length [ohm/m]. */
  readonly resistance: number;
}

/** Hoses of one kind in stock. */
export interface BayHose {
  readonly id: string;
  /** Length of one [m]. */
  readonly length: number;
  /** How many [-]. */
  readonly count: number;
  /** Pressure lost per length at the job's flow [Pa/m]. */
  readonly pressureLoss: number;
}

/** What may be laid in the bay. */
export interface BayStock {
  readonly leads: readonly BayLead[];
  readonly hoses: readonly BayHose[];
  /** Covers under which leads may cross a walkway [-]. */
  readonly covers: number;
}

/** What a place for the station is judged by. */
export interface StationTask {
  readonly bay: Bay;
  readonly stock: BayStock;
  /** Current in the leads [A]. */
  readonly current: number;
  /** Resistance of one joint between two leads [ohm]. */
  readonly jointResistance: number;
  /** Pressure lost in one joint between two hoses [Pa]. */
  readonly jointPressureLoss: number;
  /** Loss that a pascal of pressure counts as; the air's volume flow in the hose makes it the power lost there [W/Pa]. */
  readonly pressureWeight: number;
  /** Distance between the places tried [m]. */
  readonly grid: number;
  /** Slack on every run, as a share of the way [-]. */
  readonly slack: number;
  /** Length at the ends of every run, up from the floor and to the terminals [m]. */
  readonly tail: number;
  /** Distance between cleats [m]. */
  readonly cleatEvery: number;
}

/** Slack, tail and cleats as the trade commonly lays leads; common practice, no source. */
export const LAYING_PRACTICE = { slack: 0.1, tail: 1.5, cleatEvery: 2 } as const;

/** Leads and hoses that one run is made of, in the order of the stock: counts of each kind. */
export type Counts = readonly number[];
