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

/**
 * Carbon equivalent CET of a steel, as EN 1011-2 method B takes it for preheat.
 *
 * CET = C + (Mn + Mo)/10 + (Cr + Cu)/20 + Ni/40; an element left out counts as absent.
 *
 * @param composition - mass percents [record], each from 0 to 100
 * @returns carbon equivalent [%]
 * @source EN 1011-2:2001 Annex C method B (memory)
 * @example
 * carbonEquivalentCET({ C: 0.17, Mn: 1.4, Cr: 0.05, Mo: 0.02, V: 0.005, Ni: 0.05, Cu: 0.05 }) // => 0.31825
 */
export function carbonEquivalentCET(composition: Composition): number {
  const { C, Mn, Cr, Mo, Ni, Cu } = fullComposition(composition);
  return C + (Mn + Mo) / 10 + (Cr + Cu) / 20 + Ni / 40;
}

/**
 * Cracking parameter Pcm of a steel after Ito and Bessyo.
 *
 * Pcm = C + Si/30 + (Mn + Cu + Cr)/20 + Ni/60 + Mo/15 + V/10 + 5 B. Meant for steels of 0.07 to 0.22 % carbon;
 * an element left out counts as absent.
 *
 * @param composition - mass percents [record], each from 0 to 100
 * @returns cracking parameter [%]
 * @source Ito and Bessyo, Journal of the Japan Welding Society, 1968 (memory)
 * @example
 * crackingParameterPcm({ C: 0.17, Si: 0.35, Mn: 1.4, Cr: 0.05, Mo: 0.02, V: 0.005, Ni: 0.05, Cu: 0.05 }) // => 0.25933333
 */
export function crackingParameterPcm(composition: Composition): number {
  const { C, Si, Mn, Cr, Mo, V, Ni, Cu, B } = fullComposition(composition);
  return C + Si / 30 + (Mn + Cu + Cr) / 20 + Ni / 60 + Mo / 15 + V / 10 + 5 * B;
}

/**
 * Carbon equivalent CEN of a steel after Yurioka, which goes over from Pcm to CEV as carbon rises.
 *
 * CEN = C + A (Si/24 + Mn/6 + Cu/15 + Ni/20 + (Cr + Mo + V + Nb)/5 + 5 B), A = 0.75 + 0.25 tanh(20 (C - 0.12)).
 * Meant for 0.02 to 0.25 % carbon; an element left out counts as absent.
 *
 * @param composition - mass percents [record], each from 0 to 100
 * @returns carbon equivalent [%]
 * @source Yurioka et al. 1983 (memory: the divisors of copper, nickel and boron; the rest seen in a public text)
 * @example
 * carbonEquivalentCEN({ C: 0.17, Si: 0.35, Mn: 1.4, Cr: 0.05, Mo: 0.02, V: 0.005, Ni: 0.05, Cu: 0.05, Nb: 0.02 }) // => 0.4264937
 */
export function carbonEquivalentCEN(composition: Composition): number {
  const { C, Si, Mn, Cr, Mo, V, Ni, Cu, Nb, B } = fullComposition(composition);
  const share = 0.75 + 0.25 * Math.tanh(20 * (C - 0.12));
  return C + share * (Si / 24 + Mn / 6 + Cu / 15 + Ni / 20 + (Cr + Mo + V + Nb) / 5 + 5 * B);
}
