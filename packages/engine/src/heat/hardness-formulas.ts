import { type Composition, crackingParameterPcm, fullComposition } from '../material/index.ts';

/** Hardness after one formula. */
export interface FormulaHardness {
  readonly name: string;
  /** Vickers hardness [HV]. */
  readonly hardness: number;
  /** Who published the formula. */
  readonly source: string;
}

/** Hardness from the full composition and the cooling time [s]. */
type Formula = (composition: Composition, coolingTime: number) => number;

/**
 * Hardness of martensite by its carbon.
 *
 * HM = 884 C (1 - 0.3 C^2) + 294, for up to 0.8 % carbon.
 *
 * @param carbon - carbon content [%], 0 to 0.8
 * @returns Vickers hardness [HV]
 * @source Yurioka et al., Metal Construction 19 (1987) (memory)
 * @example
 * martensiteHardness(0.6) // => 767.1168
 */
export function martensiteHardness(carbon: number): number {
  return 884 * carbon * (1 - 0.3 * carbon ** 2) + 294;
}

/** What boron adds to the equivalent of martensite, by parts per million and the nitrogen that binds it. */
function boronTerm(boron: number, nitrogen: number): number {
  const ppm = Math.round(boron * 1e4);
  const step = ppm <= 1 ? 0 : Math.min(3, ppm - 1);
  return (0.03 * step * (0.02 - nitrogen)) / 0.02;
}

function clip(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), Math.max(least, most));
}

const yurioka1987: Formula = (composition, coolingTime) => {
  const { C, Si, Mn, Cu, Ni, Cr, Mo, V, Nb, B, N } = fullComposition(composition);
  const cp = C <= 0.3 ? C : C / 6 + 0.25;
  const one =
    cp +
    Si / 24 +
    Mn / 6 +
    Cu / 15 +
    Ni / 12 +
    (Cr * (1 - 0.16 * Math.sqrt(Cr))) / 8 +
    Mo / 4 +
    boronTerm(B, N);
  const two = C + Si / 24 + Mn / 5 + Cu / 10 + Ni / 18 + Cr / 5 + Mo / 2.5 + V / 5 + Nb / 3;
  const three = cp + Mn / 3.6 + Cu / 20 + Ni / 9 + Cr / 5 + Mo / 4;
  const martensite = martensiteHardness(C);
  const bainite = 145 + 130 * Math.tanh(2.65 * two - 0.69);
  const allMartensite = Math.exp(10.6 * one - 4.8);
  const noMartensite = Math.exp(6.2 * three + 0.74);
  const x = (4 * Math.log(coolingTime / allMartensite)) / Math.log(noMartensite / allMartensite) - 2;
  const hardness = (martensite + bainite) / 2 - 0.455 * (martensite - bainite) * Math.atan(x);
  return clip(hardness, bainite, martensite);
};

const yurioka1981: Formula = (composition, coolingTime) => {
  const { C, Si, Mn, Cu, Ni, Cr, Mo, V, Nb, B } = fullComposition(composition);
  const one = C + Si / 24 + Mn / 6 + Cu / 15 + Ni / 40 + Cr / 6 + Mo / 4 + V / 5 + Nb / 5 + 10 * B;
  const two = C - Si / 30 + Mn / 5 + Cu / 5 + Ni / 20 + Cr / 4 + Mo / 6 + 10 * B;
  const x = (Math.log10(coolingTime) - 2.822 * two + 0.262) / (0.526 - 0.195 * two);
  return 406 * C + 164 * one + 183 - (369 * C - 149 * one + 100) * Math.atan(x);
};

const dueren: Formula = (composition, coolingTime) => {
  const { C, Si, Mn, Cu, Cr, Ni, Mo, V } = fullComposition(composition);
  const x = Si / 11 + Mn / 8 + Cu / 9 + Cr / 5 + Ni / 17 + Mo / 6 + V / 3;
  const log = Math.log10(coolingTime);
  const mixed = 2019 * (C * (1 - 0.5 * log) + 0.3 * x) + 66 * (1 - 0.8 * log);
  return clip(mixed, 350 * (C + x) + 101, 802 * C + 305);
};

const suzuki: Formula = (composition, coolingTime) => {
  const { C } = fullComposition(composition);
  const pcm = crackingParameterPcm(composition);
  const range = 237 + 1633 * C - 1157 * pcm;
  const slope = (566 + 5532 * C - 2880 * pcm) / range;
  const middle = -0.03 - 6 * C + 7.77 * pcm;
  return 884 * C + 287 - range + range / (1 + Math.exp(slope * (Math.log10(coolingTime) - middle)));
};

const FORMULAS: readonly { readonly name: string; readonly formula: Formula; readonly source: string }[] = [
  {
    name: 'Yurioka 1987',
    formula: yurioka1987,
    source: 'Yurioka, Okumura, Kasuya, Cotton, Metal Construction 19 (1987)',
  },
  { name: 'Yurioka 1981', formula: yurioka1981, source: 'Yurioka et al., IIW Doc. IX-1232-82' },
  { name: 'Lorenz and Düren', formula: dueren, source: 'Lorenz and Düren 1981, Düren 1985' },
  { name: 'Suzuki', formula: suzuki, source: 'Suzuki, IIW Doc. IX-1351-85' },
];

/**
 * Greatest hardness beside an arc by four published formulas, from composition and cooling time.
 *
 * Two of Yurioka, one of Lorenz and Düren, one of Suzuki. Those that have a martensite and a bainite end are
 * kept between them. None of them is the best everywhere: show them as a band.
 *
 * @param composition - mass percents [record], carbon 0.02 to 0.3 %, transformable low-alloy steels
 * @param coolingTime - cooling time from 800 to 500 degC [s], > 0; stated for about 2 to 30
 * @returns name, hardness and source of each [list]
 * @source four papers, coefficients recalled (memory); they agree within 30 HV for a steel of 355 N/mm2
 * @example
 * hardnessByFormulas({ C: 0.17, Si: 0.35, Mn: 1.4, Cr: 0.05, Mo: 0.02, Ni: 0.05, Cu: 0.05, V: 0.005, Nb: 0.02, N: 0.006 }, 5)[0].hardness // => 371.26808
 */
export function hardnessByFormulas(
  composition: Composition,
  coolingTime: number,
): readonly FormulaHardness[] {
  return FORMULAS.map(({ name, formula, source }) => ({
    name,
    hardness: formula(composition, coolingTime),
    source,
  }));
}
