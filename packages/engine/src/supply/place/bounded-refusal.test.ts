import { expect, it } from 'vitest';
import { type BayPoint, LAYING_PRACTICE, type StationTask } from './bay.ts';
import { chooseStation } from './choose-station.ts';

const box = (x: number, y: number, w: number, h: number): BayPoint[] => [
  { x, y },
  { x: x + w, y },
  { x: x + w, y: y + h },
  { x, y: y + h },
];
const crowd = Array.from({ length: 40 }, (_, i) => ({
  id: `stack ${i}`,
  corners: box(4 + (i % 10) * 2.4, 1 + Math.floor(i / 10) * 4, 0.6, 0.6),
}));
const task: StationTask = {
  bay: {
    outline: box(0, 0, 32, 18),
    obstacles: crowd,
    walkways: [],
    powerSource: { x: 1, y: 9 },
    airDrop: { x: 1, y: 10 },
    workpiece: { id: 'plate', corners: box(20, 7, 2, 0.5) },
    seam: [
      { x: 19, y: 7.2 },
      { x: 23, y: 7.2 },
    ],
    keepOut: 1,
    clearance: 0.2,
  },
  stock: {
    leads: [{ id: 'lead', length: 40, count: 8, resistance: 2e-4 }],
    hoses: [{ id: 'hose', length: 40, count: 8, pressureLoss: 100 }],
    covers: 0,
  },
  current: 500,
  jointResistance: 1e-4,
  jointPressureLoss: 800,
  pressureWeight: 0.004,
  // More places than could be judged one by one in any time that somebody waits.
  grid: 0.07,
  ...LAYING_PRACTICE,
};

it.each<[string, StationTask, RegExp]>([
  [
    'a wall right across a crowded bay',
    { ...task, bay: { ...task.bay, obstacles: [...crowd, { id: 'wall', corners: box(2, 0, 0.3, 18) }] } },
    /close off a part/,
  ],
  [
    'a walkway right across it and no covers',
    { ...task, bay: { ...task.bay, walkways: [{ id: 'aisle', corners: box(2, 0, 0.3, 18) }] } },
    /covers are needed and 0 are in stock/,
  ],
])('refuses at once: %s', (_, of, reason) => {
  const outcome = chooseStation(of);
  expect(outcome.ok ? 'chosen' : outcome.issues[0]!.message).toMatch(reason);
});
