import type { Issue, Outcome } from '../issue/index.ts';

/** Chemical composition in mass percent; an element that is left out counts as absent. */
export interface Composition {
  /** Carbon [%]. */
  readonly C?: number | undefined;
  /** Manganese [%]. */
  readonly Mn?: number | undefined;
  /** Silicon [%]. */
  readonly Si?: number | undefined;
  /** Chromium [%]. */
  readonly Cr?: number | undefined;
  /** Molybdenum [%]. */
  readonly Mo?: number | undefined;
  /** Vanadium [%]. */
  readonly V?: number | undefined;
  /** Nickel [%]. */
  readonly Ni?: number | undefined;
  /** Copper [%]. */
  readonly Cu?: number | undefined;
  /** Niobium [%]. */
  readonly Nb?: number | undefined;
  /** Titanium [%]. */
  readonly Ti?: number | undefined;
  /** Boron [%]. */
  readonly B?: number | undefined;
  /** Nitrogen [%]. */
  readonly N?: number | undefined;
}

/** Every element of a composition, absent ones as 0 [%]. */
export type FullComposition = Readonly<Record<keyof Composition, number>>;

/** Elements of a composition, in the order they are listed. */
const ELEMENTS: readonly (keyof Composition)[] = [
  'C',
  'Mn',
  'Si',
  'Cr',
  'Mo',
  'V',
  'Ni',
  'Cu',
  'Nb',
  'Ti',
  'B',
  'N',
];

/**
 * The composition with every element named, for arithmetic.
 *
 * @param composition - mass percents [record], each from 0 to 100
 * @returns every element, absent ones as 0 [%]
 * @source none: bookkeeping
 * @example
 * fullComposition({ C: 0.16 }).Mn // => 0
 */
export function fullComposition(composition: Composition): FullComposition {
  const { C = 0, Mn = 0, Si = 0, Cr = 0, Mo = 0, V = 0, Ni = 0, Cu = 0 } = composition;
  const { Nb = 0, Ti = 0, B = 0, N = 0 } = composition;
  return { C, Mn, Si, Cr, Mo, V, Ni, Cu, Nb, Ti, B, N };
}

/**
 * Refuses contents that no metal can have: below 0, or more than 100 % together.
 *
 * @param composition - mass percents [record], each from 0 to 100 and at most 100 together
 * @returns every element, absent ones as 0, or what is wrong [%]
 * @source none: bookkeeping
 * @example
 * checkComposition({ C: 0.16, Mn: 1.4 }) // => {"ok":true,"value":{"C":0.16,"Mn":1.4,"Si":0,"Cr":0,"Mo":0,"V":0,"Ni":0,"Cu":0,"Nb":0,"Ti":0,"B":0,"N":0}}
 * checkComposition({ C: 60, Cr: 60 }).ok // => false
 */
export function checkComposition(composition: Composition): Outcome<FullComposition> {
  const full = fullComposition(composition);
  const wrong = ELEMENTS.filter((element) => !(full[element] >= 0 && full[element] <= 100));
  if (wrong.length > 0) {
    const issues = wrong.map(
      (element): Issue => ({
        code: 'JOB_FIELD_VALUE',
        message: `A metal cannot hold ${full[element]} % ${element}: write a mass percent from 0 to 100.`,
        path: element,
        read: String(full[element]),
        accepted: 'a mass percent from 0 to 100',
      }),
    );
    return { ok: false, issues };
  }
  const sum = ELEMENTS.reduce((total, element) => total + full[element], 0);
  if (sum <= 100) return { ok: true, value: full };
  const shown = Number(sum.toPrecision(4));
  const issue: Issue = {
    code: 'JOB_COMBINATION',
    message: `The elements of the composition add up to ${shown} %, which is more than 100 %: check the mass percents.`,
    path: '',
    read: `${shown} %`,
    accepted: 'mass percents that add up to no more than 100',
  };
  return { ok: false, issues: [issue] };
}
