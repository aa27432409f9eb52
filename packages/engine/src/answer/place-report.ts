/** Where everything stands in the bay, in metres from the bay's own origin, x to the right and y up the plan. */
export interface PlaceReport {
  readonly bay: BayReport;
  /** Where the control station stands; null where no place is reached by what is in stock. */
  readonly station: {
    /** Its place [m]. */
    readonly at_m: PointReport;
    /** `found`: best of all places on the grid; `stated`: the kit says where. */
    readonly chosen: 'found' | 'stated';
    /** Places on the grid that were looked at [-]. */
    readonly places_tried: number;
    /** Heat that the leads make there at the setting [W]; null where it is not known. */
    readonly loss_W: number | null;
  } | null;
  readonly routes: readonly RouteReport[];
  readonly picks: readonly PickReport[];
  /** What is left in stock after the picks. */
  readonly left: readonly PickReport[];
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
  /** The workpiece; null where the kit does not draw it. */
  readonly workpiece: AreaReport | null;
  /** The seam, from its start [m]. */
  readonly seam_m: readonly PointReport[];
  /** Power sources and air drops. */
  readonly posts: readonly {
    readonly name: string;
    readonly kind: 'power' | 'air';
    /** Its place [m]. */
    readonly at_m: PointReport;
  }[];
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
  readonly kind: 'electrode lead' | 'work lead' | 'air hose' | 'control cable';
  readonly from: string;
  readonly to: string;
  /** Corners of its way [m]. */
  readonly path_m: readonly PointReport[];
  /** Length needed, slack included [m]. */
  readonly needed_m: number;
  /** Length of what is picked for it [m]. */
  readonly picked_m: number;
  /** Pieces put together, each by its name in stock. */
  readonly pieces: readonly string[];
  /** Joints between the pieces [-]. */
  readonly joints: number;
  /** Places where it is tied or bridged where people walk [-]. */
  readonly cleats: number;
}

/** Pieces of one kind in stock. */
export interface PickReport {
  readonly name: string;
  readonly kind: 'lead' | 'hose' | 'joint' | 'cleat';
  /** Size, such as `95 mm2` or `3/4 in`. */
  readonly size: string;
  /** Length of one [m]; null where it has none. */
  readonly length_m: number | null;
  /** How many [-]. */
  readonly count: number;
}
