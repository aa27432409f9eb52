import type { SonicConductance } from './sonic-conductance.ts';

/** Loss of something in a run, as a length in bores. */
export interface AirFitting {
  /** Name, such as `90 deg elbow`. */
  readonly name: string;
  /** Loss of one as a length of the same bore, in bores [-]. */
  readonly lengthInBores: number;
  /** How many [-]. */
  readonly count: number;
}

/** A pipe or a hose of one bore. */
export interface AirRun {
  readonly kind: 'pipe' | 'hose';
  readonly id: string;
  /** Bore [m]. */
  readonly bore: number;
  /** Length [m]. */
  readonly length: number;
  /** Absolute roughness of the wall, 0 for smooth [m]. */
  readonly roughness: number;
  /** Fittings and couplings; `unknown` where a hose's couplings are not described. */
  readonly fittings: readonly AirFitting[] | 'unknown';
}

/** A valve, filter or quick coupling with a measured conductance. */
export interface AirComponent extends SonicConductance {
  readonly kind: 'component';
  readonly id: string;
  /** A closed valve lets nothing pass. */
  readonly open: boolean;
}

/** A pressure regulator. */
export interface AirRegulator {
  readonly kind: 'regulator';
  readonly id: string;
  /** Pressure set without flow [Pa gauge]. */
  readonly set: number;
  /** Fall of the outlet pressure per free air flow, 0 for none [Pa s/m3]. */
  readonly droop: number;
  /** Conductance when wide open; left out: no loss. */
  readonly wideOpen?: SonicConductance;
}

/** Branches side by side, joined at both ends. */
export interface AirParallel {
  readonly kind: 'parallel';
  readonly id: string;
  readonly branches: readonly (readonly (AirRun | AirComponent)[])[];
}

/** Air that other users take at this place. */
export interface AirDraw {
  readonly kind: 'draw';
  readonly id: string;
  /** Free air taken [m3/s]. */
  readonly freeAir: number;
}

/** One thing the air passes on its way. */
export type AirItem = AirRun | AirComponent | AirRegulator | AirParallel | AirDraw;

/** The air passage of the torch, by measured conductance or by its bore. */
export type AirTorch =
  | ({ readonly kind: 'conductance' } & SonicConductance)
  | {
      readonly kind: 'bore';
      /** Bore of one hole [m]. */
      readonly bore: number;
      /** Number of holes [-]. */
      readonly holes: number;
      /** Discharge coefficient of a hole [-]. */
      readonly dischargeCoefficient: number;
    };

/** One point of a delivery curve. */
export interface DeliveryPoint {
  /** Delivery pressure [Pa gauge]. */
  readonly pressure: number;
  /** Free air delivered (20 degC, 1 bar, dry) [m3/s]. */
  readonly freeAir: number;
}

/** A compressor: free air delivered at one pressure, or at several. */
export interface AirCompressor {
  /** Delivery, by rising pressure; constant below the first pressure, none above the last. */
  readonly delivery: readonly DeliveryPoint[];
}

/** A receiver and the band between which its pressure switch works. */
export interface AirReceiver {
  /** Volume [m3]. */
  readonly volume: number;
  /** Pressure at which the compressor starts to deliver [Pa gauge]. */
  readonly cutIn: number;
  /** Pressure at which the compressor stops delivering [Pa gauge]. */
  readonly cutOut: number;
}

/** Everything from the compressor to the torch. */
export interface AirSupply {
  /** Pressure of the atmosphere [Pa abs]. */
  readonly atmosphere: number;
  /** Temperature of the air in receiver and hoses [K]. */
  readonly temperature: number;
  readonly compressor: AirCompressor;
  readonly receiver: AirReceiver;
  /** What the air passes, from receiver to torch. */
  readonly path: readonly AirItem[];
  readonly torch: AirTorch;
}
