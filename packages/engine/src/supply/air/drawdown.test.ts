import { describe, expect, it } from 'vitest';
import { once } from './air.test-support.ts';
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
  const outcome = airDrawdown(supply, { pressure, at: 'regulator' }, once(time));
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value;
}

describe('airDrawdown', () => {
  it('blows down through a choked torch as the closed form says', () => {
    // tau = V / (C rho0 R T) while choked: p(t) = p0 exp(-t/tau).
    const tau = 0.5 / (8e-8 * 1.185 * AIR_GAS_CONSTANT * 293.15);
    const { below, samples } = solved(bare, 3e5, 60);
    expect(Math.abs(below!.time - tau * Math.log(8 / 4))).toBeLessThan(1e-4);
    for (const { time, receiver } of samples.filter(({ receiver: p }) => p > 1.01e5)) {
      expect(receiver + 1e5).toBeCloseTo(8e5 * Math.exp(-time / tau), 0);
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
    expect(run.samples.at(-1)!.receiver).toBeCloseTo(settled, 0);
    expect(run.compressorStarts).toBe(1);
  });

  it('cycles between cut-in and cut-out with a compressor that gives more than is taken', () => {
    const supply: AirSupply = {
      ...bare,
      compressor: { delivery: [{ pressure: 7e5, freeAir: 0.1 }] },
      receiver: { volume: 0.5, cutIn: 6e5, cutOut: 7e5 },
    };
    const run = solved(supply, 5e5, 300);
    expect(run.compressorStarts).toBeGreaterThan(3);
    expect(run.lowest).toBeCloseTo(6e5, 3);
    expect(Math.max(...run.samples.map(({ receiver }) => receiver))).toBeLessThan(700_001);
    expect(run.below).toBeUndefined();
  });

  it('follows a tiny receiver through a whole shift', () => {
    const supply: AirSupply = {
      ...bare,
      compressor: { delivery: [{ pressure: 7e5, freeAir: 0.03 }] },
      receiver: { volume: 1e-5, cutIn: 6.5e5, cutOut: 7e5 },
    };
    const run = solved(supply, 4e5, 30_000);
    expect(run.samples.at(-1)!.time).toBe(30_000);
    expect(run.samples.length).toBeLessThan(1000);
  });

  it('says at once where even a full receiver does not give the pressure', () => {
    const run = solved(bare, 8e5, 10);
    expect(run.needed).toBeUndefined();
    expect(run.below).toMatchObject({ time: 0, pass: 1 });
  });

  it('warns of a receiver that lasts less than a minute', () => {
    expect(solved(bare, 3e5, 60).cautions.map(({ code }) => code)).toEqual(['AIR_RECEIVER_SMALL']);
    const large = { ...bare, receiver: { ...bare.receiver, volume: 5 } };
    expect(solved(large, 3e5, 60).cautions).toEqual([]);
  });

  it('keeps time with a regulator set to the wanted pressure', () => {
    const supply: AirSupply = { ...bare, path: [{ kind: 'regulator', id: 'r', set: 4e5, droop: 0 }] };
    const flow = 8e-8 * 1.185 * 5e5;
    const { below } = solved(supply, 4e5, 100);
    expect(below!.time).toBeCloseTo((0.5 * 3e5) / (AIR_GAS_CONSTANT * 293.15 * flow), 3);
  });

  it.each([
    ['no pressure', 0, 60],
    ['no time', 5e5, 0],
  ])('refuses a wish of %s', (_, pressure, time) => {
    const outcome = airDrawdown(bare, { pressure, at: 'torch' }, once(time));
    expect(outcome.ok ? [] : outcome.issues.map(({ code }) => code)).toEqual(['AIR_VALUE']);
  });

  describe('through several passes', () => {
    const small: AirSupply = {
      ...bare,
      compressor: { delivery: [{ pressure: 7e5, freeAir: 0.02 }] },
      receiver: { volume: 1, cutIn: 6e5, cutOut: 7e5 },
    };
    const duty = [
      { arc: true, duration: 40 },
      { arc: false, duration: 20 },
      { arc: true, duration: 40 },
      { arc: false, duration: 20 },
      { arc: true, duration: 40 },
    ];

    function through(supply: AirSupply, wanted: number, of = duty): Drawdown {
      const outcome = airDrawdown(supply, { pressure: wanted, at: 'torch' }, of);
      if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
      return outcome.value;
    }

    it('each pass begins with what the last one and its pause left', () => {
      const { lowestByPass, samples } = through(small, 3e5);
      expect(lowestByPass[1]!).toBeLessThan(lowestByPass[0]! - 1e4);
      expect(lowestByPass[2]!).toBeLessThan(lowestByPass[1]!);
      // While the torch is shut the receiver takes all that the compressor gives.
      const pause = samples.filter(({ interval }) => interval === 1);
      const filled = ((pause.at(-1)!.receiver - pause[0]!.receiver) * 1) / (AIR_GAS_CONSTANT * 293.15);
      expect(filled).toBeCloseTo(0.02 * FREE_AIR_DENSITY * 20, 6);
    });

    it('tells the pass in which the pressure is first too low, and how far into it', () => {
      const { lowestByPass } = through(small, 3e5);
      const wanted = (lowestByPass[0]! + lowestByPass[1]!) / 2;
      const { below } = through(small, wanted);
      expect(below!.pass).toBe(2);
      expect(below!.time).toBeCloseTo(60 + below!.intoPass, 9);
      expect(below!.intoPass).toBeGreaterThan(0);
      expect(through(small, lowestByPass[2]! * 0.999).below).toBeUndefined();
    });

    it('a pause in which others take air leaves the receiver lower', () => {
      const shared: AirSupply = { ...small, path: [{ kind: 'draw', id: 'shed', freeAir: 0.005 }] };
      expect(through(shared, 3e5).lowest).toBeLessThan(through(small, 3e5).lowest - 1e4);
    });

    it('a quick draw, whose air cools, falls lower than a slow one, never by more than 1.4 times', () => {
      const one = through(
        { ...small, compressor: { delivery: [{ pressure: 7e5, freeAir: 0 }] } },
        3e5,
        duty.slice(0, 1),
      );
      // Choked and without delivery: p = p0 exp(-n t/tau).
      const tau = 1 / (8e-8 * 1.185 * AIR_GAS_CONSTANT * 293.15);
      expect(one.lowestQuick + 1e5).toBeCloseTo(8e5 * Math.exp((-1.4 * 40) / tau), 0);
      expect(one.lowest + 1e5).toBeCloseTo(8e5 * Math.exp(-40 / tau), 0);
    });

    it('is followed alike whether the receiver is large or a thousandth of it', () => {
      const carried: AirSupply = { ...small, compressor: { delivery: [{ pressure: 7e5, freeAir: 0.1 }] } };
      const tiny = through({ ...carried, receiver: { ...carried.receiver, volume: 1e-4 } }, 3e5);
      expect(tiny.lowest).toBeCloseTo(6e5, 3);
      expect(tiny.compressorStarts).toBeGreaterThan(1000);
      expect(tiny.samples.length).toBeLessThan(30_000);
    });
  });
});
