/** Where everything stands in the bay, in metres from the bay's own origin, x to the right and y up the plan. */
export interface PlaceReport {
  readonly bay: BayReport;
  /** Where the control station stands; null where it cannot stand where the kit says, or nowhere. */
  readonly station: {
    /** Its place [m]. */
    readonly at_m: PointReport;
    /** `found`: least loss of all places on the grid; `stated`: the kit says where. */
    readonly chosen: 'found' | 'stated';
    /** Places on the grid [-]. */
    readonly places_tried: number;
    /** Places judged one by one; a bound rules the others out [-]. */
    readonly places_judged: number;
    /** Power lost in the picked leads and hoses at the setting [W]. */
    readonly loss_W: number;
    /** How much farther than every point of the seam the shorter of lead and hose would reach [m]. */
    readonly reach_margin_m: number;
  } | null;
  /** The place of least loss and what is lost there, where the kit states another; null where it states none. */
  readonly least: {
    readonly at_m: PointReport;
    /** Power lost there [W]. */
    readonly loss_W: number;
  } | null;
  readonly routes: readonly RouteReport[];
  readonly picks: readonly PickReport[];
  /** What is left in stock after the picks. */
  readonly left: readonly PickReport[];
  /** Covers that the walkways need [-]. */
  readonly covers: number;
  /** Distance that leads and hoses keep from the seam, but where they come to it at right angles [m]. */
  readonly lead_clearance_m: number;
  /** Where the jet throws: one outline for each stretch and way, out of bounds for station and people [m]. */
  readonly jets_m: readonly (readonly PointReport[])[];
  /** What stands or lies where the jet throws, or beside the seam, in words. */
  readonly cautions: readonly string[];
  /** Leads side by side in every run of leads, as in the leads laid now [-]. */
  readonly parallels: number;
  readonly says: string;
}

/** A point of the plan view. */
export interface PointReport {
  /** To the right [m]. */
  readonly x_m: number;
  /** Up the plan [m]. */
  readonly y_m: number;
}

/** What stands in the bay. */
export interface BayReport {
  /** Corners of the bay, in order [m]. */
  readonly outline_m: readonly PointReport[];
  readonly obstacles: readonly AreaReport[];
  readonly walkways: readonly AreaReport[];
  readonly workpiece: AreaReport;
  /** The seam, from its start [m]. */
  readonly seam_m: readonly PointReport[];
  /** Power sources and air drops. */
  readonly posts: readonly {
    readonly name: string;
    readonly kind: 'power' | 'air' | 'work clamp';
    /** Its place [m]. */
    readonly at_m: PointReport;
  }[];
  /** Distance that the station keeps from the seam [m]. */
  readonly keep_out_m: number;
}

/** A closed area of the plan view. */
export interface AreaReport {
  readonly name: string;
  /** Corners in order [m]. */
  readonly outline_m: readonly PointReport[];
}

/** One lead or hose as it is laid. */
export interface RouteReport {
  readonly name: string;
  readonly kind: 'electrode lead' | 'work lead' | 'air hose';
  readonly from: string;
  readonly to: string;
  /** Corners of its way [m]. */
  readonly path_m: readonly PointReport[];
  /** Length needed, slack included [m]. */
  readonly needed_m: number;
  /** Length of what is picked for it [m]. */
  readonly picked_m: number;
  /** Pieces put together, each by its number and its name in stock. */
  readonly pieces: readonly string[];
  /** Joints between the pieces one behind the other [-]. */
  readonly joints: number;
  /** Cleats along the way [-]. */
  readonly cleats: number;
  /** Power lost in it at the setting [W]. */
  readonly loss_W: number;
}

/** Pieces of one kind in stock. */
export interface PickReport {
  readonly name: string;
  readonly kind: 'lead' | 'hose';
  /** Size of a lead, such as `95 mm2`; bore of a hose, such as `19 mm`. */
  readonly size: string;
  /** Length of one [m]. */
  readonly length_m: number;
  /** How many [-]. */
  readonly count: number;
}
