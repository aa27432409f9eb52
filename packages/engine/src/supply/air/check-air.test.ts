import { describe, expect, it } from 'vitest';
import type { AirSupply } from './air-supply.ts';
import { checkAir } from './check-air.ts';

const sound: AirSupply = {
  atmosphere: 101325,
  temperature: 293.15,
  compressor: { delivery: [{ pressure: 8e5, freeAir: 0.02 }] },
  receiver: { volume: 0.5, cutIn: 6e5, cutOut: 8e5 },
  path: [],
  torch: { kind: 'bore', bore: 0.002, holes: 3, dischargeCoefficient: 0.9 },
};

describe('checkAir', () => {
  it('finds nothing wrong with a sound supply', () => {
    expect(checkAir(sound)).toEqual([]);
  });

  it.each([
    ['temperature in degC', { ...sound, temperature: 20 }, 'temperature'],
    [
      'no receiver volume',
      { ...sound, receiver: { ...sound.receiver, volume: Number.NaN } },
      'receiver.volume',
    ],
    ['cut-out at the cut-in', { ...sound, receiver: { ...sound.receiver, cutIn: 8e5 } }, 'receiver.cutOut'],
    ['no compressor data', { ...sound, compressor: { delivery: [] } }, 'compressor.delivery'],
    [
      'a cut-out that the compressor does not reach',
      { ...sound, compressor: { delivery: [{ pressure: 7e5, freeAir: 0.02 }] } },
      'receiver.cutOut',
    ],
    [
      'delivery points out of order',
      {
        ...sound,
        compressor: {
          delivery: [
            { pressure: 9e5, freeAir: 0.02 },
            { pressure: 8e5, freeAir: 0.02 },
          ],
        },
      },
      'compressor.delivery[1]',
    ],
    [
      'a discharge coefficient above 1',
      { ...sound, torch: { kind: 'bore', bore: 0.002, holes: 3, dischargeCoefficient: 1.2 } },
      'torch.dischargeCoefficient',
    ],
    [
      'a critical ratio of 1',
      { ...sound, torch: { kind: 'conductance', conductance: 1e-8, criticalRatio: 1 } },
      'torch',
    ],
    [
      'a regulator set to nothing',
      { ...sound, path: [{ kind: 'regulator', id: 'r', set: 0, droop: 0 }] },
      'path[0]',
    ],
    ['a pair of nothing', { ...sound, path: [{ kind: 'parallel', id: 'p', branches: [] }] }, 'path[0]'],
  ] satisfies [string, AirSupply, string][])('names the place of %s', (_, supply, path) => {
    expect(checkAir(supply).map((issue) => issue.path)).toContain(path);
  });
});
