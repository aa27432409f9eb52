import { describe, expect, it } from 'vitest';
import { airPoint } from './air-point.ts';
import type { AirItem, AirRun, AirSupply } from './air-supply.ts';

const hose: AirRun = { kind: 'hose', id: 'hose', bore: 0.0127, length: 15, roughness: 1.5e-6, fittings: [] };

function supplyOf(path: readonly AirItem[], conductance = 2.5e-8): AirSupply {
  return {
    atmosphere: 101325,
    temperature: 293.15,
    compressor: { delivery: [{ pressure: 9e5, freeAir: 0.02 }] },
    receiver: { volume: 0.5, cutIn: 7e5, cutOut: 9e5 },
    path,
    torch: { kind: 'conductance', conductance, criticalRatio: 0.5 },
  };
}

function solved(path: readonly AirItem[], receiver: number, conductance?: number) {
  const outcome = airPoint(supplyOf(path, conductance), receiver);
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value;
}

describe('airPoint', () => {
  it('holds the set pressure behind a regulator, whatever the receiver has above it', () => {
    const regulator: AirItem = { kind: 'regulator', id: 'regulator', set: 6e5, droop: 0 };
    const high = solved([{ ...hose, id: 'line' }, regulator, hose], 9e5);
    const low = solved([{ ...hose, id: 'line' }, regulator, hose], 8e5);
    expect(high.regulating).toBe('regulator');
    expect(high.regulator).toBeCloseTo(6e5, 3);
    expect(low.torchFlow).toBeCloseTo(high.torchFlow, 10);
    expect(low.points[1]!.flowing).toBeLessThan(high.points[1]!.flowing);
    expect(low.points[1]!.flowing).toBeGreaterThan(6e5);
    expect(high.points.map((point) => point.static)).toEqual([9e5, 9e5, 6e5, 6e5]);
  });

  it('lets a regulator droop with the flow', () => {
    const point = solved([{ kind: 'regulator', id: 'r', set: 6e5, droop: 1e6 }, hose], 9e5);
    expect(point.regulator).toBeCloseTo(6e5 - point.torchFlow * 1e6, 3);
  });

  it('passes a regulator wide open when the receiver is too low for it', () => {
    const point = solved([{ kind: 'regulator', id: 'r', set: 6e5, droop: 0 }, hose], 5e5);
    expect(point.regulating).toBeUndefined();
    expect(point.regulator).toBeCloseTo(5e5, 6);
  });

  it('finds a hose that chokes before a wide torch', () => {
    const point = solved([{ ...hose, bore: 0.006 }], 8e5, 2e-7);
    expect(point.choked).toContain('hose');
  });

  it('finds a quick coupling that chokes, with the torch below it unchoked', () => {
    const coupling: AirItem = {
      kind: 'component',
      id: 'coupling',
      conductance: 1e-8,
      criticalRatio: 0.3,
      open: true,
    };
    const point = solved([coupling, hose], 8e5, 2e-7);
    expect(point.choked).toEqual(['coupling']);
    expect(point.torch).toBeLessThan(5e4);
  });

  it('splits the flow over two hoses as over one that has twice the passage', () => {
    const twin: AirItem = { kind: 'parallel', id: 'pair', branches: [[hose], [{ ...hose, id: 'second' }]] };
    const two = solved([twin], 7e5);
    const one = solved([hose], 7e5);
    expect(two.torch).toBeGreaterThan(one.torch);
    // Half the flow in each: the same pressures as one hose feeding half the torch.
    expect(two.torch).toBeCloseTo(solved([hose], 7e5, 1.25e-8).torch, 3);
  });

  it('takes what other users draw out of the receiver', () => {
    const point = solved([{ kind: 'draw', id: 'grinder', freeAir: 0.005 }, hose], 7e5);
    expect(point.receiverFlow - point.torchFlow).toBeCloseTo(0.005, 9);
  });

  it.each([
    [
      'a closed valve',
      [{ kind: 'component', id: 'valve', conductance: 1e-7, criticalRatio: 0.4, open: false }],
      'AIR_CLOSED',
    ],
    ['zero length', [{ ...hose, length: 0 }], 'AIR_VALUE'],
    ['a negative length', [{ ...hose, length: -3 }], 'AIR_VALUE'],
    ['a bore that is no number', [{ ...hose, bore: Number.NaN }], 'AIR_VALUE'],
    ['two hoses of one name', [hose, hose], 'AIR_VALUE'],
    ['users that take all', [hose, { kind: 'draw', id: 'others', freeAir: 9 }], 'AIR_NO_FLOW'],
  ] satisfies [string, AirItem[], string][])('refuses %s', (_, path, code) => {
    const outcome = airPoint(supplyOf(path), 7e5);
    expect(outcome.ok ? [] : outcome.issues.map((issue) => issue.code)).toEqual([code]);
  });

  it('refuses an empty receiver', () => {
    const outcome = airPoint(supplyOf([hose]), 0);
    expect(outcome.ok ? '' : outcome.issues[0]!.message).toMatch(/no pressure above the atmosphere/);
  });

  it('leaves out a branch that is shut', () => {
    const shut: AirItem = { kind: 'component', id: 'v', conductance: 1e-7, criticalRatio: 0.4, open: false };
    const twin: AirItem = {
      kind: 'parallel',
      id: 'pair',
      branches: [[hose], [{ ...hose, id: 'second' }, shut]],
    };
    expect(solved([twin], 7e5).torch).toBeCloseTo(solved([hose], 7e5).torch, 6);
  });
});
