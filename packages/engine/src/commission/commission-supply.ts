/** One lead or joint of the loop, as the supply's solution has it. */
export interface CommissionItem {
  /** Identifier, unique in the loop. */
  readonly id: string;
  readonly kind: 'lead' | 'joint';
  readonly name: string;
  /** Between source and electrode holder, or between plate and source. */
  readonly side: 'electrode' | 'work';
  /** Name of the point nearer the source. */
  readonly from: string;
  /** Name of the point nearer the arc. */
  readonly to: string;
  /** Resistance, of all parallels together, as cold as before the first arc [ohm]. */
  readonly resistance: number;
  /** Current through it when the loop carries `setCurrent` [A]. */
  readonly current: number;
  /** Size as the kit writes it, such as 95 mm2 or 4/0 AWG; a joint has none. */
  readonly size?: string;
  /** Leads side by side; 1 where it is left out [-]. */
  readonly parallels?: number;
  /** Length of one of them [m]. */
  readonly length?: number;
  /** Greatest resistance at which a joint still counts as tight: twice `resistance`, or less where that would heat it beyond what its lead stands; twice where it is left out [ohm]. */
  readonly resistanceMost?: number;
}

/** One power source. */
export interface CommissionSource {
  readonly name: string;
  /** Volts at the terminals with no arc [V]. */
  readonly noLoadVoltage: number;
  /** Point at its terminal for the electrode lead. */
  readonly electrodePoint: string;
  /** Point at its terminal for the work lead. */
  readonly workPoint: string;
}

/** One run of pipe or hose. */
export interface CommissionAirRun {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** Bore [m]. */
  readonly bore: number;
  /** Length [m]. */
  readonly length: number;
}

/** A pressure between the ends that a sound, full rig may show. */
export interface PressureSpan {
  /** With the receiver at its cut-in [Pa gauge]. */
  readonly least: number;
  /** With the receiver at its cut-out [Pa gauge]. */
  readonly most: number;
}

/** One place where the air pressure can be read. */
export interface CommissionAirPoint {
  readonly name: string;
  /** With the valve at the torch shut. */
  readonly staticPressure: PressureSpan;
  /** While the air flows. */
  readonly flowingPressure: PressureSpan;
  readonly atTorch: boolean;
}

/** What commissioning needs to know of the supply: the results of its solution, plainly. */
export interface CommissionSupply {
  readonly polarity: 'electrode_positive' | 'electrode_negative';
  /** Current for which the items' currents are stated [A]. */
  readonly setCurrent: number;
  /** Point at the electrode holder. */
  readonly holderPoint: string;
  /** Point on the plate beside the groove. */
  readonly platePoint: string;
  readonly sources: readonly CommissionSource[];
  readonly items: readonly CommissionItem[];
  readonly airRuns: readonly CommissionAirRun[];
  readonly airPoints: readonly CommissionAirPoint[];
  /** What the receiver stands between while the compressor keeps it; left out where no air is known. */
  readonly receiver?: PressureSpan;
}
