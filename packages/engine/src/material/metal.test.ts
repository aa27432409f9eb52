import { describe, expect, it } from 'vitest';
import { meltingEnergyOf } from './melting-energy.ts';
import { metalOf } from './metal.ts';
import { METAL_FAMILIES } from './metals/index.ts';

describe.each(METAL_FAMILIES)('metalOf(%s)', (family) => {
  const metal = metalOf(family);
  const numbers = [metal.density, metal.meltingEnergy, ...Object.values(metal.meltingData)];

  it('gives each number with unit, source and a spread around it', () => {
    for (const { value, unit, source, range } of numbers) {
      expect(unit).not.toBe('');
      expect(source.length).toBeGreaterThan(3);
      expect(range!.min).toBeLessThanOrEqual(value);
      expect(range!.max).toBeGreaterThanOrEqual(value);
    }
  });

  it('derives the melting energy from its four parts', () => {
    const { density, specificHeat, meltingPoint, latentHeat } = metal.meltingData;
    const sensible = specificHeat.value * (meltingPoint.value - 293.15);
    expect(metal.meltingEnergy.value).toBeCloseTo(density.value * (sensible + latentHeat.value), 0);
    expect(metal.meltingEnergy.provenance).toBe('derived');
  });

  it('says what it is, how to connect it and what to beware of, each with a source', () => {
    for (const advice of [metal.polarity, metal.electrodeType, ...metal.cautions]) {
      expect(advice.text).toMatch(/[.]$/);
      expect(advice.source).not.toBe('');
    }
    expect(metal.cautions.length).toBeGreaterThan(0);
  });

  it('says where the removal law was not fitted', () => {
    const said = metal.cautions.some((caution) =>
      caution.text.includes('removal law was fitted to carbon steel'),
    );
    expect(said).toBe(!metal.depthLawFitted);
  });
});

it('counts the removal law as fitted for carbon and low-alloy steel only', () => {
  expect(METAL_FAMILIES.filter((family) => metalOf(family).depthLawFitted)).toEqual([
    'carbon_steel',
    'low_alloy_steel',
  ]);
});

describe('a composition adds cautions', () => {
  const texts = (c: Parameters<typeof metalOf>[1]): string =>
    metalOf('carbon_steel', c)
      .cautions.map((caution) => caution.text)
      .join('\n');

  it('by the carbon equivalent', () => {
    expect(texts({ C: 0.1, Mn: 0.6 })).not.toContain('Carbon equivalent');
    expect(texts({ C: 0.17, Mn: 1.4 })).toContain('Carbon equivalent 0.40 %: preheat is usually asked');
    expect(texts({ C: 0.45, Mn: 0.8 })).toContain('heat treatment after welding are usually asked');
  });

  it('where it reads as another family', () => {
    expect(texts({ C: 0.05, Cr: 18.5, Ni: 9, Mn: 1.5 })).toContain('reads as austenitic stainless steel');
    expect(texts({ C: 0.17, Mn: 1.4 })).not.toContain('reads as');
  });

  it('and throws where no metal can have it', () => {
    expect(() => metalOf('carbon_steel', { C: -1 })).toThrow(RangeError);
  });
});

it('gives the melting energy no spread where its parts have none', () => {
  const sure = (value: number) => ({ value, unit: '-', source: 'test', provenance: 'memory' as const });
  const energy = meltingEnergyOf({
    density: sure(1000),
    specificHeat: sure(500),
    meltingPoint: sure(1293.15),
    latentHeat: sure(1e5),
  });
  expect(energy).toMatchObject({ value: 6e8, unit: 'J/m3', range: { min: 6e8, max: 6e8 } });
});
