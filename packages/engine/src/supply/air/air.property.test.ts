import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AirPoint, airPoint } from './air-point.ts';
import { FREE_AIR_DENSITY } from './air-state.ts';
import type { AirItem, AirRun, AirSupply } from './air-supply.ts';
import { conductedFlow } from './sonic-conductance.ts';

const run = fc.record({
  bore: fc.double({ min: 0.004, max: 0.05, noNaN: true }),
  length: fc.double({ min: 0.2, max: 120, noNaN: true }),
  roughness: fc.constantFrom(0, 1.5e-6, 4.5e-5),
  elbows: fc.integer({ min: 0, max: 6 }),
});
const scene = fc.record({
  runs: fc.array(run, { minLength: 1, maxLength: 4 }),
  set: fc.option(fc.double({ min: 2e5, max: 9e5, noNaN: true }), { nil: undefined }),
  receiver: fc.double({ min: 2e5, max: 1.2e6, noNaN: true }),
  conductance: fc.double({ min: 2e-9, max: 3e-7, noNaN: true }),
  at: fc.nat(3),
});
type Scene = typeof scene extends fc.Arbitrary<infer T> ? T : never;
const settings = { seed: 20260, numRuns: 150 };

function supplyOf({ runs, set, conductance }: Scene): AirSupply {
  const hoses = runs.map(
    ({ bore, length, roughness, elbows }, i): AirRun => ({
      kind: 'hose',
      id: `hose ${i}`,
      bore,
      length,
      roughness,
      fittings: [{ name: 'elbow', lengthInBores: 30, count: elbows }],
    }),
  );
  const regulator: AirItem[] =
    set === undefined ? [] : [{ kind: 'regulator', id: 'regulator', set, droop: 2e5 }];
  return {
    atmosphere: 101325,
    temperature: 293.15,
    compressor: { delivery: [{ pressure: 1.3e6, freeAir: 0.02 }] },
    receiver: { volume: 0.5, cutIn: 5e5, cutOut: 1.2e6 },
    path: [...hoses.slice(0, 1), ...regulator, ...hoses.slice(1)],
    torch: { kind: 'conductance', conductance, criticalRatio: 0.5 },
  };
}

function solved(supply: AirSupply, receiver: number): AirPoint {
  const outcome = airPoint(supply, receiver);
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value;
}

function withRun(
  { runs, at }: Scene,
  change: (run: Scene['runs'][number]) => Partial<Scene['runs'][number]>,
) {
  return runs.map((each, i) => (i === at % runs.length ? { ...each, ...change(each) } : each));
}

describe('the air path', () => {
  it('conserves mass: the torch passes at its pressure what the receiver gives', () => {
    fc.assert(
      fc.property(scene, (s) => {
        const point = solved(supplyOf(s), s.receiver);
        const torch = { conductance: s.conductance, criticalRatio: 0.5 };
        const inlet = point.torch + 101325;
        const passed = (conductedFlow(inlet, 101325, torch, 293.15) / FREE_AIR_DENSITY) * 6e4;
        // Near no drop the flow equation is infinitely steep: compare what the rounding of pressures allows.
        expect(Math.abs(passed - point.receiverFlow * 6e4)).toBeLessThan(1e-4 * passed + 1e-3);
      }),
      settings,
    );
  });

  it('never rises along the way, and stays between receiver and atmosphere', () => {
    fc.assert(
      fc.property(scene, (s) => {
        const flowing = solved(supplyOf(s), s.receiver).points.map((point) => point.flowing);
        for (const [i, pressure] of flowing.entries()) {
          expect(pressure).toBeGreaterThanOrEqual(-1e-3);
          expect(pressure).toBeLessThanOrEqual((flowing[i - 1] ?? s.receiver) + 1e-2);
        }
      }),
      settings,
    );
  });

  it('a longer hose never raises the pressure at the torch, nor the flow', () => {
    fc.assert(
      fc.property(scene, fc.double({ min: 1, max: 5, noNaN: true }), (s, factor) => {
        const before = solved(supplyOf(s), s.receiver);
        const runs = withRun(s, ({ length }) => ({ length: length * factor }));
        const after = solved(supplyOf({ ...s, runs }), s.receiver);
        expect(after.torch).toBeLessThanOrEqual(before.torch + 1e-3);
        expect(after.torchFlow).toBeLessThanOrEqual(before.torchFlow * (1 + 1e-9));
      }),
      settings,
    );
  });

  it('a wider bore never lowers the pressure at the torch, at the same effective length', () => {
    fc.assert(
      fc.property(scene, fc.double({ min: 1, max: 3, noNaN: true }), (s, factor) => {
        const plain = { ...s, runs: s.runs.map((each) => ({ ...each, elbows: 0 })) };
        const before = solved(supplyOf(plain), s.receiver);
        const runs = withRun(plain, ({ bore }) => ({ bore: bore * factor }));
        const after = solved(supplyOf({ ...plain, runs }), s.receiver);
        expect(after.torch).toBeGreaterThanOrEqual(before.torch - 1e-3);
      }),
      settings,
    );
  });

  it('a branch beside a hose never lowers the pressure', () => {
    fc.assert(
      fc.property(scene, run, (s, beside) => {
        const supply = supplyOf({ ...s, set: undefined });
        const first = supply.path[0] as AirRun;
        const branch: AirRun = { ...first, id: 'beside', bore: beside.bore, length: beside.length };
        const pair: AirItem = { kind: 'parallel', id: 'pair', branches: [[first], [branch]] };
        const after = solved({ ...supply, path: [pair, ...supply.path.slice(1)] }, s.receiver);
        expect(after.torch).toBeGreaterThanOrEqual(solved(supply, s.receiver).torch - 1e-2);
      }),
      settings,
    );
  });
});
