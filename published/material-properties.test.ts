import { readFileSync } from 'node:fs';
import { carbonEquivalentIIW, carbonSteelEnthalpy, metalOf, stainlessEnthalpy } from '@furrow/engine';
import { describe, expect, it } from 'vitest';

/**
 * Properties of steels against published values, kept in material-properties.json in the units of their sources:
 * EN 1993-1-2 enthalpy as an open structural code computes it, the points of the Mills fits for type 316, IIW
 * carbon equivalents, and a handbook rule for the heat to melt a metal.
 */
const published = JSON.parse(
  readFileSync(new URL('./material-properties.json', import.meta.url), 'utf8'),
) as {
  ec3_enthalpy: { temperature_degC: number[]; J_per_m3: number[]; density_kg_per_m3: number };
  ec3_specific_heat: { temperature_degC: number[]; J_per_kg_K: number[] };
  mills_316_specific_heat: { temperature_K: number[]; J_per_kg_K: number[] };
  iiw: { composition: Record<string, number>; cev_percent: number }[];
  melting_carbon_steel: { J_per_m3: number; customary_J_per_m3: number };
  melting_rule: { divisor: number; within: number };
};

/** Central difference of an enthalpy: the specific heat that it is the integral of. */
function slope(enthalpy: (t: number) => number, temperature: number): number {
  const step = 1e-3;
  return (enthalpy(temperature + step) - enthalpy(temperature - step)) / (2 * step);
}

describe('EN 1993-1-2:2005, carbon steel', () => {
  const { temperature_degC, J_per_m3, density_kg_per_m3 } = published.ec3_enthalpy;
  it.each(temperature_degC.map((t, i) => [t, J_per_m3[i]!] as const))(
    'enthalpy at %s degC',
    (t, expected) => {
      expect(carbonSteelEnthalpy(t + 273.15) * density_kg_per_m3).toBeCloseTo(expected, -1);
    },
  );

  const { temperature_degC: points, J_per_kg_K } = published.ec3_specific_heat;
  it.each(points.map((t, i) => [t, J_per_kg_K[i]!] as const))(
    'its slope is the specific heat at %s degC',
    (t, cp) => {
      expect(Math.abs(slope(carbonSteelEnthalpy, t + 273.15) / cp - 1)).toBeLessThan(1e-5);
    },
  );
});

describe('type 316 stainless, fits after Mills 2002', () => {
  const { temperature_K, J_per_kg_K } = published.mills_316_specific_heat;
  it.each(temperature_K.map((t, i) => [t, J_per_kg_K[i]!] as const))('slope at %s K', (t, cp) => {
    expect(Math.abs(slope(stainlessEnthalpy, t) / cp - 1)).toBeLessThan(1e-6);
  });

  it('takes up no heat at 20 degC', () => {
    expect(stainlessEnthalpy(293.15)).toBe(0);
  });
});

it.each(published.iiw)('IIW carbon equivalent $cev_percent', ({ composition, cev_percent }) => {
  expect(carbonEquivalentIIW(composition)).toBeCloseTo(cev_percent, 8);
});

describe('energy to melt', () => {
  const steel = metalOf('carbon_steel').meltingEnergy;

  it('carbon steel: as built up from the same properties elsewhere', () => {
    expect(Math.abs(steel.value / published.melting_carbon_steel.J_per_m3 - 1)).toBeLessThan(1e-6);
  });

  it('carbon steel: the customary figure lies inside the stated spread', () => {
    expect(steel.range!.min).toBeLessThan(published.melting_carbon_steel.customary_J_per_m3);
    expect(steel.range!.max).toBeGreaterThan(published.melting_carbon_steel.customary_J_per_m3);
  });

  it.each([
    'carbon_steel',
    'low_alloy_steel',
    'austenitic_stainless',
    'cast_iron',
    'copper_alloy',
    'nickel_alloy',
    'manganese_steel',
  ] as const)('%s: within the band of the handbook rule (T + 273)^2 / 300000', (family) => {
    const { meltingEnergy, meltingData } = metalOf(family);
    const rule = (meltingData.meltingPoint.value ** 2 / published.melting_rule.divisor) * 1e9;
    expect(Math.abs(meltingEnergy.value / rule - 1)).toBeLessThan(published.melting_rule.within);
  });
});
