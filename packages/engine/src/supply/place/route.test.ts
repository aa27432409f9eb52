import { describe, expect, it } from 'vitest';
import type { BayPoint } from './bay.ts';
import { crossingsOf, groundOf, sightsFrom, spreadFrom, wayTo } from './route.ts';

const box = (x: number, y: number, w: number, h: number): BayPoint[] => [
  { x, y },
  { x: x + w, y },
  { x: x + w, y: y + h },
  { x, y: y + h },
];
const room = box(0, 0, 10, 10);

function way(blocks: BayPoint[][], from: BayPoint, to: BayPoint, outline = room) {
  const ground = groundOf(outline, blocks);
  return wayTo(ground, from, sightsFrom(ground, from), spreadFrom(ground, to));
}

describe('shortest ways', () => {
  it('go straight where nothing stands', () => {
    expect(way([], { x: 1, y: 1 }, { x: 4, y: 5 }).length).toBeCloseTo(5, 12);
  });

  it('go around a box on its shorter side', () => {
    const found = way([box(4, 1, 2, 8)], { x: 1, y: 6 }, { x: 9, y: 6 });
    expect(found.length).toBeCloseTo(2 * Math.hypot(3, 3) + 2, 12);
    expect(found.points).toHaveLength(4);
  });

  it('go around the inner corner of a bay', () => {
    const bent = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 5 },
      { x: 5, y: 5 },
      { x: 5, y: 10 },
      { x: 0, y: 10 },
    ];
    const found = way([], { x: 2, y: 9 }, { x: 9, y: 2 }, bent);
    expect(found.length).toBeCloseTo(10, 12);
  });

  it('do not pass between a wall and the box that stands against it', () => {
    expect(way([box(4, 0, 1, 10)], { x: 1, y: 1 }, { x: 9, y: 1 }).length).toBe(Number.POSITIVE_INFINITY);
    expect(way([box(4, 0, 1, 5), box(4, 5, 1, 5)], { x: 1, y: 1 }, { x: 9, y: 1 }).length).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  it('slide along a wall that has room on its other side', () => {
    expect(way([box(4, 2, 2, 2)], { x: 1, y: 4 }, { x: 9, y: 4 }).length).toBeCloseTo(8, 12);
  });

  it('count every time they go through an area', () => {
    const u = [box(2, 0, 1, 10), box(6, 0, 1, 5)];
    const line = (y: number): BayPoint[] => [
      { x: 0, y },
      { x: 2.5, y },
      { x: 9, y },
    ];
    expect(crossingsOf(line(2), u)).toBe(2);
    expect(crossingsOf(line(7), u)).toBe(1);
  });
});
