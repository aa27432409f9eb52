import { expect, test } from 'vitest';
import { hatch } from './hatch.ts';

const square = [
  { x: 0, y: 0 },
  { x: 10, y: 0 },
  { x: 10, y: 10 },
  { x: 0, y: 10 },
];

test('hatches a square with lines that rise to the right and end on its sides', () => {
  const lines = hatch(square, 5, 'floor-hatch');
  expect(lines.map(({ from, to }) => [from, to])).toEqual(
    expect.arrayContaining([
      [
        { x: 0, y: 5 },
        { x: 5, y: 0 },
      ],
      [
        { x: 5, y: 10 },
        { x: 10, y: 5 },
      ],
    ]),
  );
});

test('leaves the hollow of a shape free', () => {
  const withHollow = [
    { x: 0, y: 0 },
    { x: 4, y: 0 },
    { x: 4, y: 10 },
    { x: 6, y: 10 },
    { x: 6, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 12 },
    { x: 0, y: 12 },
  ];
  for (const { from, to } of hatch(withHollow, 1, 'floor-hatch')) {
    const middle = (from.x + to.x) / 2;
    if ((from.y + to.y) / 2 < 9.9) expect(middle <= 4 || middle >= 6).toBe(true);
  }
});

test('hatches nothing where there is no shape or no spacing', () => {
  expect(hatch(square.slice(0, 2), 5, 'floor-hatch')).toEqual([]);
  expect(hatch(square, 0, 'floor-hatch')).toEqual([]);
});
