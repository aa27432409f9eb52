import type { Source } from '../../limit/index.ts';
import { PSI } from '../../quantity/index.ts';

/** A pressure and where it comes from. */
export interface SourcedPressure {
  /** Pressure [Pa gauge]. */
  readonly value: number;
  readonly source: Source;
}

/** What the air must hold while the torch blows. */
export interface AirDemand {
  /** Least flowing pressure behind the regulator. */
  readonly regulator: SourcedPressure;
  /** Least flowing pressure before the torch. */
  readonly torch: SourcedPressure;
  /** Where the torch's passage comes from: the shop's own measurement, or a recalled figure. */
  readonly torchSource: Source;
}

/** Flowing pressure behind the regulator that the trade asks for: 80 psi, common practice. */
export const REGULATOR_PRESSURE: SourcedPressure = {
  value: 80 * PSI,
  source: { text: 'common practice, no source: 80 to 100 psi while flowing', provenance: 'common practice' },
};

/** Flowing pressure before the torch at which the process still works: 60 psi, an encyclopaedia. */
export const TORCH_PRESSURE: SourcedPressure = {
  value: 60 * PSI,
  source: { text: 'encyclopaedia article on air-arc work: 60 to 100 psi', provenance: 'confirmed' },
};
