import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BayPoint, LAYING_PRACTICE, type StationTask } from './bay.ts';
import { checkPlace } from './check-place.ts';
import { chooseStation, judge, lossScore } from './choose-station.ts';
import { type Piece, pick, shelfOf } from './pick.ts';
import { groundOf, sightsFrom, spreadFrom, wayTo } from './route.ts';
import { isBetter, type Score } from './station-grid.ts';
import { sceneOf } from './station-scene.ts';

const box = (x: number, y: number, w: number, h: number): BayPoint[] => [
  { x, y },
  { x: x + w, y },
  { x: x + w, y: y + h },
  { x, y: y + h },
];
const decimal = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('shortest ways', () => {
  it('are the same both ways, and no shorter than the straight line', () => {
    const at = fc.record({ x: decimal(0.1, 9.9), y: fc.constantFrom(0.5, 3.1, 9.3) });
    const ground = groundOf(box(0, 0, 10, 10), [box(2, 1, 1, 2), box(5, 3.5, 2, 5), box(8, 0.7, 1, 2)]);
    const way = (from: BayPoint, to: BayPoint): number =>
      wayTo(ground, from, sightsFrom(ground, from), spreadFrom(ground, to)).length;
    fc.assert(
      fc.property(at, at, (a, b) => {
        const there = way(a, b);
        expect(way(b, a)).toBeCloseTo(there, 9);
        expect(there).toBeGreaterThanOrEqual(Math.hypot(a.x - b.x, a.y - b.y) - 1e-9);
      }),
      { seed: 7, numRuns: 60 },
    );
  });
});

describe('the pick', () => {
  const piece = fc.record({
    length: fc.integer({ min: 2, max: 15 }),
    count: fc.integer({ min: 0, max: 3 }),
    loss: decimal(0.1, 9),
  });

  /** Every way to deal pieces to runs, without any order or bound. */
  function leastByHand(pieces: readonly Piece[], jointLoss: number, needs: readonly number[]): number {
    const single = pieces.flatMap(({ length, count, loss }) =>
      Array.from({ length: count }, () => ({ length, loss })),
    );
    let best = Number.POSITIVE_INFINITY;
    for (let code = 0; code < (needs.length + 1) ** single.length; code += 1) {
      let rest = code;
      let loss = 0;
      const lengths = needs.map(() => 0);
      const joints = needs.map(() => -1);
      for (const each of single) {
        const run = (rest % (needs.length + 1)) - 1;
        rest = Math.floor(rest / (needs.length + 1));
        if (run < 0) continue;
        lengths[run]! += each.length;
        joints[run]! += 1;
        loss += each.loss;
      }
      if (lengths.some((length, run) => length < needs[run]!) || joints.some((n) => n > 4 || n < 0)) continue;
      best = Math.min(best, loss + jointLoss * joints.reduce((sum, n) => sum + n, 0));
    }
    return best;
  }

  it('is the least of all', () => {
    fc.assert(
      fc.property(
        fc.array(piece, { minLength: 1, maxLength: 3 }),
        decimal(0, 2),
        fc.array(decimal(1, 25), { minLength: 1, maxLength: 2 }),
        (pieces, jointLoss, needs) => {
          const found = pick(shelfOf(pieces, jointLoss)!, needs)?.loss ?? Number.POSITIVE_INFINITY;
          const least = leastByHand(pieces, jointLoss, needs);
          if (least === Number.POSITIVE_INFINITY) expect(found).toBe(least);
          else expect(found).toBeCloseTo(least, 9);
        },
      ),
      { seed: 11, numRuns: 120 },
    );
  });
});

describe('the station', () => {
  const scene = fc.record({
    obstacle: fc.record({ x: decimal(2, 5), y: decimal(0.5, 4), w: decimal(0.3, 2), h: decimal(0.5, 4) }),
    source: fc.record({ x: decimal(0.1, 1.5), y: decimal(0.1, 8.9) }),
    air: fc.record({ x: decimal(0.1, 1.5), y: decimal(0.1, 8.9) }),
    walkway: fc.option(decimal(4, 7), { nil: undefined }),
    covers: fc.integer({ min: 0, max: 4 }),
    leads: fc.array(fc.tuple(fc.integer({ min: 4, max: 20 }), fc.integer({ min: 1, max: 3 })), {
      minLength: 1,
      maxLength: 3,
    }),
    hoses: fc.array(fc.tuple(fc.integer({ min: 4, max: 20 }), fc.integer({ min: 1, max: 3 })), {
      minLength: 1,
      maxLength: 3,
    }),
  });

  it('is as good as looking at every place, in any bay', () => {
    let found = 0;
    fc.assert(
      fc.property(scene, ({ obstacle: o, source, air, walkway, covers, leads, hoses }) => {
        const task: StationTask = {
          bay: {
            outline: box(0, 0, 13, 9),
            obstacles: [{ id: 'obstacle', corners: box(o.x, o.y, o.w, o.h) }],
            walkways: walkway === undefined ? [] : [{ id: 'walkway', corners: box(walkway, 0, 0.8, 7) }],
            powerSource: source,
            airDrop: air,
            workpiece: { id: 'work', corners: box(9, 3, 2, 3) },
            seam: [
              { x: 10, y: 3.2 },
              { x: 10, y: 5.8 },
            ],
            keepOut: 1.2,
            clearance: 0.3,
          },
          stock: {
            leads: leads.map(([length, count], i) => ({ id: `lead ${i}`, length, count, resistance: 2e-4 })),
            hoses: hoses.map(([length, count], i) => ({
              id: `hose ${i}`,
              length,
              count,
              pressureLoss: 900 + 100 * i,
            })),
            covers,
          },
          current: 450,
          jointResistance: 1e-4,
          jointPressureLoss: 500,
          pressureWeight: 0.004,
          grid: 0.9,
          ...LAYING_PRACTICE,
        };
        expect(checkPlace(task)).toEqual([]);
        const prepared = sceneOf(task)!;
        let best: Score = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
        for (let column = 0; column < prepared.columns; column += 1) {
          for (let row = 0; row < prepared.rows; row += 1) {
            const score = judge(prepared, column, row, lossScore);
            if (score !== undefined && isBetter(score, best)) best = score;
          }
        }
        const outcome = chooseStation(task);
        expect(outcome.ok).toBe(best[0] < Number.POSITIVE_INFINITY);
        if (!outcome.ok) return;
        found += 1;
        expect(outcome.value.loss_W).toBeCloseTo(best[0], 9);
        const needed = outcome.value.runs.reduce((sum, { needed_m }) => sum + needed_m, 0);
        expect(needed).toBeCloseTo(best[1], 9);
      }),
      { seed: 13, numRuns: 40 },
    );
    expect(found).toBeGreaterThan(10);
  });
});
