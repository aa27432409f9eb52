import type { Job } from '../job/index.ts';
import type { SourcedNumber } from '../material/index.ts';

/** What filling a groove by one process usually takes. */
export interface RefillPractice {
  /** How the process is called in a sentence. */
  readonly title: string;
  /** Weld metal per hour of arc [kg/h]. */
  readonly deposition: SourcedNumber;
  /** Share of the filler bought that ends as weld metal [-]. */
  readonly efficiency: SourcedNumber;
  /** Share of the welder's time with the arc burning [-]. */
  readonly operatingFactor: SourcedNumber;
}

const HANDBOOKS = 'middle of the range recalled from general handbooks; state your own';
const EFFICIENCIES = 'deposition efficiencies by process, a welding trade article (secondary source)';
const FACTORS = 'Handbook of Structural Steel Connection Design and Details, p. 246';

const deposition = (value: number, min: number, max: number): SourcedNumber => ({
  value,
  unit: 'kg/h',
  source: HANDBOOKS,
  provenance: 'memory',
  range: { min, max },
});

const efficiency = (min: number, max: number): SourcedNumber => ({
  value: (min + max) / 2,
  unit: '-',
  source: EFFICIENCIES,
  provenance: 'confirmed',
  range: { min, max },
});

const factor = (value: number, kind: string): SourcedNumber => ({
  value,
  unit: '-',
  source: `${FACTORS}: ${kind}`,
  provenance: 'confirmed',
});

/** The processes of a re-weld, each with what is usual. */
export const REFILL_PRACTICE: Readonly<Record<Job['reweld']['process'], RefillPractice>> = {
  stick: {
    title: 'stick electrode',
    deposition: deposition(1.75, 1, 2.5),
    efficiency: efficiency(0.6, 0.65),
    operatingFactor: factor(0.3, 'manual electrode'),
  },
  solid_wire: {
    title: 'solid wire',
    deposition: deposition(4, 2, 6),
    efficiency: efficiency(0.92, 0.99),
    operatingFactor: factor(0.4, 'semi-automatic'),
  },
  metal_cored: {
    title: 'metal-cored wire',
    deposition: deposition(4, 2, 6),
    efficiency: {
      value: 0.92,
      unit: '-',
      source: 'not covered by the source; the lower end of solid wire is taken',
      provenance: 'common practice',
    },
    operatingFactor: factor(0.4, 'semi-automatic'),
  },
  flux_cored: {
    title: 'flux-cored wire',
    deposition: deposition(4, 2, 6),
    efficiency: efficiency(0.82, 0.88),
    operatingFactor: factor(0.4, 'semi-automatic'),
  },
  submerged_arc: {
    title: 'submerged arc',
    deposition: deposition(9.5, 4, 15),
    efficiency: efficiency(0.99, 0.99),
    operatingFactor: factor(0.5, 'mechanised'),
  },
};
