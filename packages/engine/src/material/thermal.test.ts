import { describe, expect, it } from 'vitest';
import { metalOf } from './metal.ts';
import { METAL_FAMILIES } from './metals/index.ts';
import { type ThermalMetal, thermalOf } from './thermal.ts';

const at = (metal: ThermalMetal, table: 'enthalpy' | 'conductivity', celsius: number): number =>
  metal[table][Math.round((celsius + 273.15 - metal.start) / metal.step)]!;

describe.each(METAL_FAMILIES)('thermalOf(%s)', (family) => {
  const metal = thermalOf(family);

  it('holds more heat at every step up, and conducts', () => {
    metal.enthalpy.forEach((heat, index) => {
      if (index > 0) expect(heat).toBeGreaterThan(metal.enthalpy[index - 1]!);
    });
    expect(Math.min(...metal.conductivity)).toBeGreaterThan(5);
    expect(metal.enthalpy.length).toBe(metal.conductivity.length);
  });

  it('holds the melting energy of the family at its liquidus', () => {
    const place = (metal.liquidus - metal.start) / metal.step;
    const energy = metalOf(family).meltingEnergy.value;
    expect(metal.enthalpy[Math.floor(place + 1e-6)]!).toBeLessThanOrEqual(energy * (1 + 1e-12));
    expect(metal.enthalpy[Math.ceil(place - 1e-6)]!).toBeGreaterThanOrEqual(energy * (1 - 1e-12));
  });

  it('covers a frozen yard and a superheated melt, and says what it rests on', () => {
    expect(metal.start).toBeLessThan(273.15 - 40);
    expect(metal.start + metal.step * (metal.enthalpy.length - 1)).toBeGreaterThan(metal.liquidus + 300);
    for (const { text } of metal.source) expect(text).not.toBe('');
  });
});

it('takes up the latent heat between solidus and liquidus', () => {
  const steel = thermalOf('carbon_steel');
  const taken = at(steel, 'enthalpy', 1500) - at(steel, 'enthalpy', 1450);
  expect(taken / 7850).toBeCloseTo(270e3 + 650 * 50, 3);
});

it('carries the specific heat at 20 degC on into the cold', () => {
  const steel = thermalOf('carbon_steel');
  expect((at(steel, 'enthalpy', 20) - at(steel, 'enthalpy', -40)) / (7850 * 60)).toBeCloseTo(439.80176, 6);
});
