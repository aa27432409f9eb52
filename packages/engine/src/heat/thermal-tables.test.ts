import { expect, it } from 'vitest';
import { thermalOf } from '../material/index.ts';
import { enthalpyAt, potentialAt, temperatureAt, thermalTables } from './thermal-tables.ts';

const METAL = thermalOf('carbon_steel');
const TABLES = thermalTables(METAL);

it('goes from temperature to heat and back', () => {
  for (let hot = 250; hot < 2400; hot += 7) {
    expect(temperatureAt(TABLES, enthalpyAt(TABLES, hot))).toBeCloseTo(hot, 6);
  }
});

it('has the metal’s own heat, peak at 735 degC and melting included, within a few kelvin’s worth of a node', () => {
  METAL.enthalpy.forEach((heat, entry) => {
    const hot = METAL.start + METAL.step * entry;
    expect(Math.abs(enthalpyAt(TABLES, hot) - heat)).toBeLessThan(1 / TABLES.perUnit);
  });
});

it('rises with the conductivity: its slope over temperature is k', () => {
  for (const hot of [300, 600, 900, 1300]) {
    const entry = (hot - METAL.start) / METAL.step;
    const low = Math.floor(entry);
    const k =
      METAL.conductivity[low]! + (METAL.conductivity[low + 1]! - METAL.conductivity[low]!) * (entry - low);
    expect((potentialAt(TABLES, hot + 10) - potentialAt(TABLES, hot - 10)) / 20).toBeCloseTo(k, 0);
  }
});
