import { type Composition, fullComposition, type MetalFamily, metalOf } from '../material/index.ts';
import { ZERO_CELSIUS } from '../quantity/index.ts';

/** Edge of the zone that heat changes in carbon steel [degC]. */
const CARBON_STEEL_EDGE = 730;
/** End of ferrite where the composition is unknown: no structural carbon steel asks for more (judgement) [degC]. */
const UNKNOWN_END = 900;
/** Where a steel turns to austenite on heating. */
export interface Transformation {
  /** Start of austenite [K]. */
  readonly ac1: number;
  /** End of ferrite [K]. */
  readonly ac3: number;
  readonly source: { readonly text: string; readonly provenance: 'derived' | 'memory' };
}

/**
 * Temperatures at which a steel begins and ends to turn to austenite on slow heating.
 *
 * Ac1 = 723 - 10.7 Mn - 16.9 Ni + 29.1 Si + 16.9 Cr; Ac3 = 910 - 203 sqrt C - 15.2 Ni + 44.7 Si + 104 V +
 * 31.5 Mo - 30 Mn - 11 Cr - 20 Cu + 400 Ti, in degC. Without a composition 730 degC stands for Ac1 and 900 degC,
 * the most that a carbon steel asks for, for Ac3. Quick heating shifts both up.
 *
 * @param family - family of the metal [text], one of the MetalFamily names
 * @param composition - mass percents [record], up to 0.6 % carbon; may be left out
 * @returns both temperatures and their source, or null for a metal that does not turn to austenite [record]
 * @source Andrews, JISI 203 (1965) (memory); API RP 577 10.2.4: 730 degC (confirmed)
 * @example
 * transformationOf('carbon_steel', { C: 0.16, Si: 0.35, Mn: 1.4 }).ac1 // => 991.355
 * transformationOf('copper_alloy') // => null
 */
export function transformationOf(family: MetalFamily, composition?: Composition): Transformation | null {
  if (!metalOf(family).hardens) return null;
  if (composition?.C === undefined) {
    return {
      ac1: ZERO_CELSIUS + CARBON_STEEL_EDGE,
      ac3: ZERO_CELSIUS + UNKNOWN_END,
      source: {
        text: 'composition unknown: 730 degC as the edge of the heated zone, API RP 577 10.2.4; 900 degC as the most that a carbon steel asks for to be all austenite (judgement)',
        provenance: 'derived',
      },
    };
  }
  const { C, Mn, Si, Ni, Cr, Mo, V, Cu, Ti } = fullComposition(composition);
  const ac1 = 723 - 10.7 * Mn - 16.9 * Ni + 29.1 * Si + 16.9 * Cr;
  const ac3 =
    910 -
    203 * Math.sqrt(C) -
    15.2 * Ni +
    44.7 * Si +
    104 * V +
    31.5 * Mo -
    30 * Mn -
    11 * Cr -
    20 * Cu +
    400 * Ti;
  return {
    ac1: ZERO_CELSIUS + ac1,
    // In a steel of much carbon the formula for the upper end falls below that for the lower one.
    ac3: ZERO_CELSIUS + Math.max(ac3, ac1),
    source: {
      text: 'Andrews, Journal of the Iron and Steel Institute 203 (1965), for slow heating',
      provenance: 'memory',
    },
  };
}
