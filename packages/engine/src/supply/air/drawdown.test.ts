import { describe, expect, it } from 'vitest';
import { AIR_GAS_CONSTANT, FREE_AIR_DENSITY } from './air-state.ts';
import type { AirSupply } from './air-supply.ts';
import { airDrawdown, type Drawdown } from './drawdown.ts';

const bare: AirSupply = {
  atmosphere: 1e5,
  temperature: 293.15,
  compressor: { delivery: [{ pressure: 7e5, freeAir: 0 }] },
  receiver: { volume: 0.5, cutIn: 1e5, cutOut: 7e5 },
  path: [],
  torch: { kind: 'conductance', conductance: 8e-8, criticalRatio: 0.5 },
};

function solved(supply: AirSupply, pressure: number, time: number): Drawdown {
  const outcome = airDrawdown(supply, { pressure, at: 'regulator', time });
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value;
}

describe('airDrawdown', () => {
  it('blows down through a choked torch as the closed form says', () => {
    // tau = V / (C rho0 R T) while choked: p(t) = p0 exp(-t/tau).
    const tau = 0.5 / (8e-8 * 1.185 * AIR_GAS_CONSTANT * 293.15);
    const { below_from_s, samples } = solved(bare, 3e5, 60);
    expect(Math.abs(below_from_s! - tau * Math.log(8 / 4))).toBeLessThan(1e-4);
    for (const { time_s, receiver_kPa } of samples.filter(({ receiver_kPa: p }) => p > 101)) {
      expect(receiver_kPa + 100).toBeCloseTo(800 * Math.exp(-time_s / tau), 3);
    }
  });

  it('settles where delivery equals flow, with a compressor that runs on', () => {
    const supply: AirSupply = {
      ...bare,
      compressor: { delivery: [{ pressure: 7e5, freeAir: 0.03 }] },
      receiver: { volume: 0.5, cutIn: 6.5e5, cutOut: 7e5 },
    };
    // Choked: C 1.185 p = 0.03 * density of free air.
    const settled = (0.03 * FREE_AIR_DENSITY) / (8e-8 * 1.185) - 1e5;
    const run = solved(supply, 4e5, 3000);
    expect(run.samples.at(-1)!.receiver_kPa).toBeCloseTo(settled / 1000, 3);
    expect(run.compressor_starts).toBe(1);
  });

  it('cycles between cut-in and cut-out with a compressor that gives more than is taken', () => {
    const supply: AirSupply = {
      ...bare,
      compressor: { delivery: [{ pressure: 7e5, freeAir: 0.1 }] },
      receiver: { volume: 0.5, cutIn: 6e5, cutOut: 7e5 },
    };
    const run = solved(supply, 5e5, 300);
    expect(run.compressor_starts).toBeGreaterThan(3);
    expect(run.lowest_kPa).toBeCloseTo(600, 6);
    expect(Math.max(...run.samples.map(({ receiver_kPa }) => receiver_kPa))).toBeLessThan(700.001);
    expect(run.below_from_s).toBeNull();
  });

  it('follows a tiny receiver through a whole shift', () => {
    const supply: AirSupply = {
      ...bare,
      compressor: { delivery: [{ pressure: 7e5, freeAir: 0.03 }] },
      receiver: { volume: 1e-5, cutIn: 6.5e5, cutOut: 7e5 },
    };
    const run = solved(supply, 4e5, 30_000);
    expect(run.samples.at(-1)!.time_s).toBe(30_000);
    expect(run.samples.length).toBeLessThan(1000);
  });

  it('says at once where even a full receiver does not give the pressure', () => {
    const run = solved(bare, 8e5, 10);
    expect(run.needed_kPa).toBeNull();
    expect(run.below_from_s).toBe(0);
  });

  it('warns of a receiver that lasts less than a minute', () => {
    expect(solved(bare, 3e5, 60).cautions.map(({ code }) => code)).toEqual(['AIR_RECEIVER_SMALL']);
    const large = { ...bare, receiver: { ...bare.receiver, volume: 5 } };
    expect(solved(large, 3e5, 60).cautions).toEqual([]);
  });

  it('keeps time with a regulator set to the wanted pressure', () => {
    const supply: AirSupply = { ...bare, path: [{ kind: 'regulator', id: 'r', set: 4e5, droop: 0 }] };
    const flow = 8e-8 * 1.185 * 5e5;
    const { below_from_s } = solved(supply, 4e5, 100);
    expect(below_from_s!).toBeCloseTo((0.5 * 3e5) / (AIR_GAS_CONSTANT * 293.15 * flow), 3);
  });

  it.each([
    ['no pressure', { pressure: 0, time: 60 }],
    ['no time', { pressure: 5e5, time: 0 }],
  ])('refuses a wish of %s', (_, wish) => {
    const outcome = airDrawdown(bare, { ...wish, at: 'torch' });
    expect(outcome.ok ? [] : outcome.issues.map(({ code }) => code)).toEqual(['AIR_VALUE']);
  });
});
