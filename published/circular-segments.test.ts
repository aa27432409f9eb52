import {
  arcHeight,
  cutPass,
  flatFloor,
  halfWidthAt,
  measureFloor,
  passArea,
  passWidth,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';

/**
 * Areas of circular segments as engineering handbooks tabulate them (partly full pipes, mensuration tables):
 * A / D2 against h / D, four places. From memory; no edition at hand. The engine's section of one shallow
 * pass is such a segment of D = the nominal width.
 */
const SEGMENTS: readonly (readonly [heightOverDiameter: number, areaOverSquare: number])[] = [
  [0.05, 0.0147],
  [0.1, 0.0409],
  [0.15, 0.0739],
  [0.2, 0.1118],
  [0.25, 0.1535],
  [0.3, 0.1982],
  [0.35, 0.245],
  [0.4, 0.2934],
  [0.45, 0.3428],
];

const WIDTH = 0.016;

describe('the table of circular segments', () => {
  it.each(SEGMENTS)('h/D = %d: A/D2 = %d, in closed form', (height, area) => {
    expect(passArea({ width: WIDTH, depth: height * WIDTH }) / WIDTH ** 2).toBeCloseTo(area, 4);
  });

  it.each(SEGMENTS)('h/D = %d: A/D2 = %d, on the simulated floor', (height, area) => {
    const floor = cutPass(flatFloor(0.012, 1e-5), { offset: 0, width: WIDTH, depth: height * WIDTH });
    expect(measureFloor(floor).area / WIDTH ** 2).toBeCloseTo(area, 4);
  });

  it.each(SEGMENTS)('h/D = %d: the chord is 2 sqrt(h (D - h))', (height) => {
    const chord = 2 * WIDTH * Math.sqrt(height * (1 - height));
    expect(passWidth({ width: WIDTH, depth: height * WIDTH })).toBeCloseTo(chord, 12);
  });
});

describe('numeric quadrature', () => {
  /** Five-point Gauss-Legendre rule on each of many panels: nodes and weights, Abramowitz and Stegun table 25.4. */
  const NODES = [
    [0, 0.568888888888889],
    [0.538469310105683, 0.478628670499366],
    [-0.538469310105683, 0.478628670499366],
    [0.906179845938664, 0.236926885056189],
    [-0.906179845938664, 0.236926885056189],
  ] as const;
  function integral(f: (x: number) => number, from: number, to: number): number {
    const panels = 400;
    const half = (to - from) / panels / 2;
    let sum = 0;
    for (let panel = 0; panel < panels; panel += 1) {
      for (const [node, weight] of NODES) sum += weight * f(from + (2 * panel + 1 + node) * half);
    }
    return sum * half;
  }

  it.each([0.002, 0.0075, 0.009, 0.015, 0.025])('of the outline gives the area of a U %d m deep', (depth) => {
    const radius = WIDTH / 2;
    const arc = Math.min(depth, arcHeight(radius));
    // By h = s2 the square root at the bottom becomes smooth.
    const bottom = integral((s) => 2 * halfWidthAt(radius, s * s) * 2 * s, 0, Math.sqrt(arc));
    const walls = integral((height) => 2 * halfWidthAt(radius, height), arc, depth);
    expect(passArea({ width: WIDTH, depth }) / (bottom + walls)).toBeCloseTo(1, 10);
  });
});
