import { expect, it } from 'vitest';
import { airPoint } from './air-point.ts';
import { airDensity, airViscosity } from './air-state.ts';
import type { AirSupply } from './air-supply.ts';
import { hoseLossPerMetre } from './hose-loss.ts';

it('is Poiseuille’s 128 mu Q/(pi D^4) in laminar flow', () => {
  const [flow, pressure, temperature, bore] = [1e-5, 3e5, 293.15, 0.01];
  const volume = flow / airDensity(pressure, temperature);
  const loss = (128 * airViscosity(temperature) * volume) / (Math.PI * bore ** 4);
  expect(hoseLossPerMetre({ flow, pressure, temperature }, bore, 0) / loss).toBeCloseTo(1, 9);
});

it('is what a metre of hose loses in the network', () => {
  const supply: AirSupply = {
    atmosphere: 101325,
    temperature: 293.15,
    compressor: { delivery: [{ pressure: 8e5, freeAir: 0.02 }] },
    receiver: { volume: 0.5, cutIn: 6e5, cutOut: 8e5 },
    path: [{ kind: 'hose', id: 'hose', bore: 0.0127, length: 1, roughness: 1.5e-6, fittings: [] }],
    torch: { kind: 'conductance', conductance: 2e-8, criticalRatio: 0.5 },
  };
  const point = airPoint(supply, 7e5);
  if (!point.ok) throw new Error(point.issues[0]!.message);
  const { receiver, torch, torchFlow } = point.value;
  const pressure = (receiver + torch) / 2 + supply.atmosphere;
  const flow = torchFlow * (100_000 / (287.05287 * 293.15));
  const loss = hoseLossPerMetre({ flow, pressure, temperature: 293.15 }, 0.0127, 1.5e-6);
  expect((receiver - torch) / loss).toBeCloseTo(1, 2);
});

it('is nothing without flow', () => {
  expect(hoseLossPerMetre({ flow: 0, pressure: 7e5, temperature: 293.15 }, 0.01, 0)).toBe(0);
});
