import { normalProbability } from '../../numeric/index.ts';

/** What is inspected, and how. */
export interface Inspection {
  /** Density of the quantity over all items [function of the quantity]. */
  readonly density: (value: number) => number;
  /** Where the density begins to count [unit of the quantity]. */
  readonly from: number;
  /** Where it ends to count [unit of the quantity]. */
  readonly to: number;
  /** Least that conforms; left out: none [unit of the quantity]. */
  readonly least?: number;
  /** Greatest that conforms; left out: none [unit of the quantity]. */
  readonly most?: number;
  /** Least reading that is accepted; left out: none [unit of the quantity]. */
  readonly acceptLeast?: number;
  /** Greatest reading that is accepted; left out: none [unit of the quantity]. */
  readonly acceptMost?: number;
  /** Standard uncertainty of a reading [unit of the quantity]. */
  readonly u: number;
}

/** How often inspection is wrong, over all items. */
export interface InspectionRisk {
  /** Share of items that do not conform [-]. */
  readonly outOfTolerance: number;
  /** Share that does not conform and is accepted: consumer's risk [-]. */
  readonly falseAccept: number;
  /** Share that conforms and is rejected: producer's risk [-]. */
  readonly falseReject: number;
  /** Share of what is accepted that does not conform [-]. */
  readonly amongAccepted: number;
}

const STEPS = 20_000;

/**
 * How often a decision by readings is wrong over all items: the global risks of an acceptance rule.
 *
 * @param inspection - density, limits, rule and uncertainty [record], u > 0
 * @returns the risks [record]
 * @source JCGM 106:2012, 9.5
 * @example
 * const density = (x) => Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
 * inspectionRisk({ density, from: -8, to: 8, most: 0, acceptMost: 0, u: 1 }).falseAccept // => 0.124999...
 */
export function inspectionRisk(inspection: Inspection): InspectionRisk {
  const { density, from, to, u } = inspection;
  const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = inspection;
  const { acceptLeast = Number.NEGATIVE_INFINITY, acceptMost = Number.POSITIVE_INFINITY } = inspection;
  const cuts = [from, ...[least, most].filter((cut) => cut > from && cut < to), to];
  let [out, falseAccept, falseReject, accepted] = [0, 0, 0, 0];
  for (let k = 0; k + 1 < cuts.length; k += 1) {
    const [low, high] = [cuts[k]!, cuts[k + 1]!];
    const conforms = (low + high) / 2 >= least && (low + high) / 2 <= most;
    const run = (high - low) / STEPS;
    for (let i = 0; i < STEPS; i += 1) {
      const value = low + (i + 0.5) * run;
      const weight = density(value) * run;
      const accept =
        normalProbability((acceptMost - value) / u) - normalProbability((acceptLeast - value) / u);
      accepted += weight * accept;
      if (conforms) falseReject += weight * (1 - accept);
      else {
        out += weight;
        falseAccept += weight * accept;
      }
    }
  }
  return { outOfTolerance: out, falseAccept, falseReject, amongAccepted: falseAccept / accepted };
}
