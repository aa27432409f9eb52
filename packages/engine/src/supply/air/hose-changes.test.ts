import { describe, expect, it } from 'vitest';
import { airPoint } from './air-point.ts';
import type { AirRun, AirSupply } from './air-supply.ts';
import { type HoseChanges, leastHoseChanges, type StockHose } from './hose-changes.ts';

const hose = (id: string, bore: number, length: number): AirRun => ({
  kind: 'hose',
  id,
  bore,
  length,
  roughness: 1.5e-6,
  fittings: [],
});

const supply: AirSupply = {
  atmosphere: 101325,
  temperature: 293.15,
  compressor: { delivery: [{ pressure: 9e5, freeAir: 0.02 }] },
  receiver: { volume: 0.5, cutIn: 7e5, cutOut: 9e5 },
  path: [hose('a', 0.0127, 30), hose('b', 0.0095, 8), hose('c', 0.0127, 15), hose('d', 0.019, 10)],
  torch: { kind: 'conductance', conductance: 4e-8, criticalRatio: 0.5 },
};
const stock: StockHose[] = [
  { ...hose('s1', 0.019, 30), count: 1 },
  { ...hose('s2', 0.016, 20), count: 2 },
  { ...hose('s3', 0.019, 10), count: 1 },
  { ...hose('s4', 0.025, 5), count: 3 },
];

function changes(pressure: number, of: StockHose[] = stock, from: AirSupply = supply): HoseChanges {
  const outcome = leastHoseChanges(from, { pressure, at: 'torch' }, of, 7e5);
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value;
}

/** Every way to change hoses, without any bound: length of the list and pressure. */
function everyWay(): { readonly size: number; readonly pressure: number }[] {
  const ways: { size: number; pressure: number }[] = [];
  const left = stock.map(({ count }) => count);
  const visit = (i: number, path: AirRun[], size: number): void => {
    if (i === supply.path.length) {
      const point = airPoint({ ...supply, path }, 7e5);
      if (point.ok) ways.push({ size, pressure: point.value.torch });
      return;
    }
    const own = supply.path[i] as AirRun;
    visit(i + 1, [...path, own], size);
    for (const [k, each] of stock.entries()) {
      if (left[k] === 0 || each.length < own.length) continue;
      left[k] = left[k]! - 1;
      const { bore, length, roughness, fittings } = each;
      visit(i + 1, [...path, { ...own, bore, length, roughness, fittings }], size + 1);
      left[k] = left[k]! + 1;
    }
  };
  visit(0, [], 0);
  return ways;
}

describe('leastHoseChanges', () => {
  const ways = everyWay();
  const best = Math.max(...ways.map((way) => way.pressure));

  it.each([0.2, 0.5, 0.8, 0.95, 1])('is the shortest list, and of those the best: %s of the way', (share) => {
    const before = changes(1e5).before;
    const wanted = before + share * (best - before) - 1e-3;
    const enough = ways.filter((way) => way.pressure >= wanted);
    const least = Math.min(...enough.map(({ size }) => size));
    const answer = changes(wanted);
    expect(answer.reached).toBe(true);
    expect(answer.changes).toHaveLength(least);
    const bestOfLeast = Math.max(...enough.filter(({ size }) => size === least).map((way) => way.pressure));
    expect(answer.after).toBeCloseTo(bestOfLeast, 3);
    // The bound told for shorter lists is no lower than what any of them gives, and not enough.
    const bestShorter = Math.max(...ways.filter(({ size }) => size < least).map((way) => way.pressure));
    expect(answer.shorterBest!).toBeGreaterThanOrEqual(bestShorter - 1e-6);
    expect(answer.shorterBest!).toBeLessThan(wanted);
    expect(answer.listsTried).toBeLessThan(ways.length);
  });

  it('changes nothing where the pressure is there', () => {
    expect(changes(1e5)).toMatchObject({ reached: true, changes: [], shorterBest: undefined });
  });

  it('says how near stock comes where it does not do', () => {
    const answer = changes(6.99e5);
    expect(answer.reached).toBe(false);
    expect(answer.after).toBeCloseTo(best, 3);
  });

  it('leaves the hoses behind the regulator alone when asked for its pressure', () => {
    const path = [
      supply.path[1]!,
      { kind: 'regulator', id: 'r', set: 6.5e5, droop: 0 } as const,
      supply.path[0]!,
    ];
    const outcome = leastHoseChanges({ ...supply, path }, { pressure: 6.5e5, at: 'regulator' }, stock, 7e5);
    expect(outcome.ok && outcome.value.changes.map(({ out }) => out)).toEqual(['b']);
  });

  it('refuses stock of no length', () => {
    const outcome = leastHoseChanges(
      supply,
      { pressure: 5e5, at: 'torch' },
      [{ ...stock[0]!, length: 0 }],
      7e5,
    );
    expect(outcome.ok ? [] : outcome.issues.map(({ path }) => path)).toEqual(['stock[0]']);
  });
});
