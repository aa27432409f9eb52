import type { Issue, IssueCode, Outcome } from '../issue/index.ts';
import { type Composition, checkComposition, type FullComposition } from './composition.ts';
import type { MetalFamily } from './metals/index.ts';

/** Contents from which a steel counts as alloyed, mass percent: EN 10020 table 1 (memory). */
const ALLOYED_FROM: Readonly<Partial<Record<keyof Composition, number>>> = {
  Mn: 1.65,
  Si: 0.6,
  Cr: 0.3,
  Mo: 0.08,
  V: 0.1,
  Ni: 0.3,
  Cu: 0.4,
};

/** EN 10020: steel holds less than 2 % carbon (memory). */
const CAST_IRON_CARBON = 2;
/** EN 10020 and EN 10088-1: stainless from 10.5 % chromium, with at most 1.2 % carbon (memory). */
const STAINLESS_CHROMIUM = 10.5;
const STAINLESS_CARBON = 1.2;
/** Between 1.9 (type 304 and its kin) and 2.9 (duplex) by Schaeffler's equivalents; set halfway (derived). */
const AUSTENITIC_RATIO = 2.4;
/** ASTM A128: at least 11 % manganese with 0.7 to 1.45 % carbon (memory). */
const AUSTENITIC_MANGANESE = 11;
const MANGANESE_STEEL_CARBON = 0.7;
/** Alloy content up to which a steel below the stainless bound is taken with the low-alloy steels (judgement). */
const ALLOY_LIMIT = 12;

function refuse(code: IssueCode, message: string, path: string, nearest?: string): Outcome<never> {
  const accepted = 'a carbon, low-alloy, austenitic stainless or manganese steel, or a cast iron';
  const issue: Issue = { code, message, path, accepted };
  return { ok: false, issues: [nearest === undefined ? issue : { ...issue, nearest }] };
}

/** Chromium over nickel equivalent after Schaeffler: how far a stainless steel is from all-austenite. */
function schaefflerRatio({ C, Mn, Si, Cr, Mo, Ni }: FullComposition): number {
  return (Cr + Mo + 1.5 * Si) / (Ni + 30 * C + 0.5 * Mn);
}

function ironIsLess(full: FullComposition): 'Ni' | 'Cu' | 'other' | undefined {
  const entries = Object.entries(full) as [keyof FullComposition, number][];
  const rest = 100 - entries.reduce((sum, [, percent]) => sum + percent, 0);
  const most = entries.find(([, percent]) => percent >= rest);
  if (!most) return undefined;
  return most[0] === 'Ni' || most[0] === 'Cu' ? most[0] : 'other';
}

function refuseOtherMetal(most: 'Ni' | 'Cu' | 'other'): Outcome<never> {
  const message =
    'The composition holds less iron than another element, so it is not of a steel: name its family.';
  const nearest = most === 'Ni' ? 'nickel_alloy' : 'copper_alloy';
  return most === 'other'
    ? refuse('JOB_COMBINATION', message, '')
    : refuse('JOB_COMBINATION', message, most, nearest);
}

function classify(full: FullComposition): Outcome<MetalFamily> {
  const { C, Mn, Cr } = full;
  if (C >= CAST_IRON_CARBON) return { ok: true, value: 'cast_iron' };
  if (Mn >= AUSTENITIC_MANGANESE && C >= MANGANESE_STEEL_CARBON)
    return { ok: true, value: 'manganese_steel' };
  if (Cr >= STAINLESS_CHROMIUM && C <= STAINLESS_CARBON) {
    if (schaefflerRatio(full) < AUSTENITIC_RATIO) return { ok: true, value: 'austenitic_stainless' };
    const message = `With ${Cr} % chromium and so little nickel this is a ferritic, martensitic or duplex stainless steel, which is not among the families.`;
    return refuse('JOB_COMBINATION', message, 'Cr', 'austenitic_stainless');
  }
  const alloying = Object.entries(full).reduce(
    (sum, [element, percent]) => sum + (element === 'C' ? 0 : percent),
    0,
  );
  if (alloying > ALLOY_LIMIT) {
    const message = `With ${Number(alloying.toPrecision(3))} % of alloying elements this steel is outside the families known here.`;
    return refuse('JOB_COMBINATION', message, '', 'low_alloy_steel');
  }
  const alloyed = Object.entries(ALLOYED_FROM).some(
    ([element, from]) => full[element as keyof Composition] >= from,
  );
  return { ok: true, value: alloyed ? 'low_alloy_steel' : 'carbon_steel' };
}

/**
 * Family of a steel or cast iron by its composition.
 *
 * Cast iron from 2 % C; manganese steel from 11 % Mn with 0.7 % C; stainless from 10.5 % Cr with at most 1.2 % C,
 * austenitic where Schaeffler's chromium equivalent is less than 2.4 times the nickel equivalent; alloyed from
 * Mn 1.65, Si 0.6, Cr 0.3, Mo 0.08, V 0.1, Ni 0.3 or Cu 0.4 %; all other steels are carbon steel. Carbon must be
 * given; another element left out counts as absent. Refused: contents below 0, a sum over 100 %, less iron
 * than another element, ferritic, martensitic and duplex stainless steels, and over 12 % alloy elsewhere.
 *
 * @param composition - mass percents [record], each from 0 to 100 and at most 100 together
 * @returns family, or why there is none [text]
 * @source EN 10020, EN 10088-1, ASTM A128, Schaeffler's equivalents (memory); the bound 2.4 derived, 12 % judgement
 * @example
 * steelFamilyOf({ C: 0.16, Si: 0.35, Mn: 1.4 }) // => {"ok":true,"value":"carbon_steel"}
 */
export function steelFamilyOf(composition: Composition): Outcome<MetalFamily> {
  if (composition.C === undefined) {
    return refuse(
      'JOB_FIELD_MISSING',
      'The carbon content is missing: without it a steel cannot be told.',
      'C',
    );
  }
  const checked = checkComposition(composition);
  if (!checked.ok) return checked;
  const most = ironIsLess(checked.value);
  return most === undefined ? classify(checked.value) : refuseOtherMetal(most);
}
