import { type Composition, carbonEquivalentCET, fullComposition } from '../material/index.ts';
import { inUnit, ZERO_CELSIUS } from '../quantity/index.ts';

/** What a preheat for welding is worked out from. */
export interface PreheatInput {
  readonly composition: Composition;
  /** Thickness of the thicker plate [m]. */
  readonly thickness: number;
  /** Diffusible hydrogen of the deposit by ISO 3690 [mL/100 g]. */
  readonly hydrogen: number;
  /** Heat input of the weld [J/m]. */
  readonly heatInput: number;
}

/** The preheat of method B with what each cause adds. */
export interface MethodBPreheat {
  /** Preheat asked for; may lie below room temperature, which means none [K]. */
  readonly temperature: number;
  /** Part of the carbon equivalent [K]. */
  readonly ofCarbon: number;
  /** Part of the thickness [K]. */
  readonly ofThickness: number;
  /** Part of the hydrogen [K]. */
  readonly ofHydrogen: number;
  /** Part of the heat input [K]. */
  readonly ofHeat: number;
  /** Inputs outside what the method is for, in words; empty: all inside. */
  readonly outside: readonly string[];
}

/** Greatest contents that the method is stated for, mass percent (memory). */
const MOST = {
  Si: 0.8,
  Mn: 1.9,
  Cr: 1.5,
  Cu: 0.7,
  Mo: 0.75,
  Nb: 0.06,
  Ni: 2.5,
  Ti: 0.12,
  V: 0.18,
  B: 0.005,
} as const;

/** What of the inputs lies outside the ranges of the method, each in words. */
function outsideOf(input: PreheatInput, cet: number, heat: number): string[] {
  const outside: string[] = [];
  const range = (title: string, value: number, least: number, most: number, unit: string): void => {
    if (value >= least && value <= most) return;
    outside.push(
      `${title} ${Number(value.toPrecision(3))} ${unit} is not within ${least} to ${most} ${unit}`,
    );
  };
  range('CET', cet, 0.2, 0.5, '%');
  range('the thickness', inUnit(input.thickness, 'mm'), 10, 90, 'mm');
  range('the hydrogen', input.hydrogen, 1, 20, 'mL/100 g');
  range('the heat input', heat, 0.5, 4, 'kJ/mm');
  const full = fullComposition(input.composition);
  range('carbon', full.C, 0.05, 0.32, '%');
  for (const [element, most] of Object.entries(MOST)) {
    range(element, full[element as keyof typeof MOST], 0, most, '%');
  }
  return outside;
}

/**
 * Preheat against cold cracks for a weld by EN 1011-2 method B, with the part of each cause.
 *
 * Tp = 697 CET + 160 tanh(d/35) + 62 HD^0.35 + (53 CET - 32) Q - 328, d in mm, HD in mL/100 g, Q in kJ/mm, Tp in
 * degC; the parts are 750 CET - 150, 160 tanh(d/35) - 110, 62 HD^0.35 - 100 and (53 CET - 32)(Q - 1). Meant for
 * CET 0.2 to 0.5 %, 10 to 90 mm, 1 to 20 mL/100 g, 0.5 to 4 kJ/mm and yield strength up to 1000 N/mm2.
 *
 * @param input - composition, thickness, hydrogen, heat input [record], each > 0; outside the ranges it is said
 * @returns temperature, its parts, and what is outside the ranges [record]
 * @source EN 1011-2:2001 Annex C, method B (memory)
 * @example
 * preheatMethodB({ composition: { C: 0.17, Mn: 1.4, Cr: 0.05, Mo: 0.02, Ni: 0.05, Cu: 0.05 }, thickness: 0.04, hydrogen: 5, heatInput: 1.2e6 }).temperature // => 388.17161
 */
export function preheatMethodB(input: PreheatInput): MethodBPreheat {
  const cet = carbonEquivalentCET(input.composition);
  const heat = inUnit(input.heatInput, 'kJ/mm');
  const ofCarbon = 750 * cet - 150;
  const ofThickness = 160 * Math.tanh(inUnit(input.thickness, 'mm') / 35) - 110;
  const ofHydrogen = 62 * input.hydrogen ** 0.35 - 100;
  const ofHeat = (53 * cet - 32) * (heat - 1);
  return {
    temperature: ZERO_CELSIUS + ofCarbon + ofThickness + ofHydrogen + ofHeat,
    ofCarbon,
    ofThickness,
    ofHydrogen,
    ofHeat,
    outside: outsideOf(input, cet, heat),
  };
}
