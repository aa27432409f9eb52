import { type Composition, fullComposition } from './composition.ts';

/**
 * Carbon equivalent CEV of a steel by the formula of the International Institute of Welding.
 *
 * CEV = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15. Meant for carbon-manganese steels with more than about
 * 0.18 % carbon; an element left out counts as absent.
 *
 * @param composition - mass percents [record], each from 0 to 100
 * @returns carbon equivalent [%]
 * @source IIW Doc. IX-535-67; API RP 577 10.8.2; EN 1011-2 method A (confirmed)
 * @example
 * carbonEquivalentIIW({ C: 0.17, Mn: 1.4, Cr: 0.05, Mo: 0.02, V: 0.005, Ni: 0.05, Cu: 0.05 }) // => 0.425
 */
export function carbonEquivalentIIW(composition: Composition): number {
  const { C, Mn, Cr, Mo, V, Ni, Cu } = fullComposition(composition);
  return C + Mn / 6 + (Cr + Mo + V) / 5 + (Ni + Cu) / 15;
}
