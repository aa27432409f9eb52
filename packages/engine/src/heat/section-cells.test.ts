import { expect, it } from 'vitest';
import { evenAxis } from './axis.ts';
import { roundFloor } from './constant-metal.test-support.ts';
import { facePieces } from './face-pieces.ts';
import { sectionCells } from './section-cells.ts';

const ACROSS = evenAxis(-0.02, 0.02, 60);
const BELOW = evenAxis(0, 0.02, 30);
const RADIUS = 0.008;
const FLOOR = roundFloor(RADIUS, 0.006);

function sum(values: Float64Array): number {
  return values.reduce((total, each) => total + each, 0);
}

it('holds the plate less the groove, to a thousandth, whatever cells the floor cuts', () => {
  const cells = sectionCells(ACROSS, BELOW, FLOOR);
  // area under the straight pieces of the floor
  const groove = FLOOR.slice(1).reduce(
    (area, { offset, depth }, at) => area + ((offset - FLOOR[at]!.offset) * (depth + FLOOR[at]!.depth)) / 2,
    0,
  );
  expect(Math.abs(sum(cells.area) / (0.04 * 0.02 - groove) - 1)).toBeLessThan(1e-3);
});

it('gives slivers to a neighbour: no cell holds less than half of itself, and what is cut out holds nothing', () => {
  const { area, holder, openAcross, openBelow } = sectionCells(ACROSS, BELOW, FLOOR);
  const full = ACROSS.widths[0]! * BELOW.widths[0]!;
  holder.forEach((holds, cell) => {
    if (holds === cell) expect(area[cell]).toBeGreaterThanOrEqual(0.5 * full - 1e-15);
    else expect([area[cell], openAcross[cell], openBelow[cell]]).toEqual([0, 0, 0]);
    if (holds >= 0) expect(holder[holds]).toBe(holds);
  });
});

it('never puts metal back: a floor that rises again leaves each its share', () => {
  const before = sectionCells(ACROSS, BELOW, FLOOR);
  expect(sectionCells(ACROSS, BELOW, roundFloor(RADIUS, 0.003), before).share).toEqual(before.share);
});

it('bounds the floor with pieces as long as the floor, each with a cell that holds metal', () => {
  const cells = sectionCells(ACROSS, BELOW, FLOOR);
  const pieces = facePieces(ACROSS, BELOW, cells, FLOOR);
  const length = FLOOR.slice(1).reduce(
    (total, { offset, depth }, at) =>
      total + Math.hypot(offset - FLOOR[at]!.offset, depth - FLOOR[at]!.depth),
    0,
  );
  expect(pieces.reduce((total, piece) => total + piece.length, 0)).toBeCloseTo(length, 12);
  for (const { cell } of pieces) expect(cells.holder[cell]).toBe(cell);
});
