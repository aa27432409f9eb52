import { describe, expect, it } from 'vitest';
import { type BayPoint, LAYING_PRACTICE, type StationTask } from './bay.ts';
import { chooseStation, judge, lossScore, type StationChoice } from './choose-station.ts';
import { isBetter, type Score } from './station-grid.ts';
import { sceneOf } from './station-scene.ts';

const box = (x: number, y: number, w: number, h: number): BayPoint[] => [
  { x, y },
  { x: x + w, y },
  { x: x + w, y: y + h },
  { x, y: y + h },
];

const task: StationTask = {
  bay: {
    outline: box(0, 0, 16, 10),
    obstacles: [{ id: 'press', corners: box(4, 2, 1.5, 6) }],
    walkways: [],
    powerSource: { x: 1, y: 5 },
    airDrop: { x: 1, y: 9 },
    workpiece: { id: 'shell', corners: box(9, 4, 5, 2) },
    seam: [
      { x: 9.2, y: 5 },
      { x: 13.8, y: 5 },
    ],
    workClamp: { x: 9.5, y: 4.2 },
    keepOut: 1.5,
    clearance: 0.4,
  },
  stock: {
    leads: [
      { id: 'lead 15 m', length: 15, count: 2, resistance: 0.0002 },
      { id: 'lead 8 m', length: 8, count: 3, resistance: 0.0002 },
      { id: 'lead 5 m', length: 5, count: 2, resistance: 0.00015 },
    ],
    hoses: [
      { id: 'hose 20 m', length: 20, count: 1, pressureLoss: 1200 },
      { id: 'hose 10 m', length: 10, count: 3, pressureLoss: 1500 },
    ],
    covers: 2,
  },
  current: 500,
  jointResistance: 1e-4,
  jointPressureLoss: 800,
  pressureWeight: 0.004,
  grid: 0.5,
  ...LAYING_PRACTICE,
};

function chosen(of: StationTask): StationChoice {
  const outcome = chooseStation(of);
  if (!outcome.ok) throw new Error(outcome.issues.map(({ message }) => message).join('\n'));
  return outcome.value;
}

function refusal(of: StationTask): string {
  const outcome = chooseStation(of);
  return outcome.ok ? 'chosen' : outcome.issues.map(({ code, message }) => `${code}: ${message}`).join('\n');
}

/** Looks at every cell of the grid. */
function exhaustive(of: StationTask): Score | undefined {
  const scene = sceneOf(of)!;
  let best: Score | undefined;
  for (let column = 0; column < scene.columns; column += 1) {
    for (let row = 0; row < scene.rows; row += 1) {
      const score = judge(scene, column, row, lossScore);
      if (
        score !== undefined &&
        score[0] < Number.POSITIVE_INFINITY &&
        (best === undefined || isBetter(score, best))
      )
        best = score;
    }
  }
  return best;
}

const walkway = { id: 'aisle', corners: box(6.5, 0, 1, 10) };
const variants: [string, StationTask][] = [
  ['one obstacle', task],
  [
    'a walkway to cross',
    { ...task, bay: { ...task.bay, walkways: [walkway] }, stock: { ...task.stock, covers: 4 } },
  ],
  [
    'a walkway that ends, and no covers',
    {
      ...task,
      bay: { ...task.bay, walkways: [{ id: 'aisle', corners: box(6.5, 0, 1, 6.5) }] },
      stock: {
        ...task.stock,
        covers: 0,
        leads: [...task.stock.leads, { id: 'lead 30 m', length: 30, count: 1, resistance: 3e-4 }],
      },
    },
  ],
  [
    'a bay with a corner',
    {
      ...task,
      bay: {
        ...task.bay,
        outline: [
          { x: 0, y: 0 },
          { x: 16, y: 0 },
          { x: 16, y: 10 },
          { x: 7, y: 10 },
          { x: 7, y: 9.5 },
          { x: 0, y: 9.5 },
        ],
        obstacles: [
          ...task.bay.obstacles,
          {
            id: 'rack',
            corners: [
              { x: 7, y: 7 },
              { x: 8.6, y: 6.2 },
              { x: 8, y: 8.7 },
            ],
          },
        ],
      },
    },
  ],
];

describe('chooseStation', () => {
  it.each(variants)('is as good as looking at every place: %s', (_, of) => {
    const choice = chosen(of);
    const best = exhaustive(of)!;
    expect(choice.loss_W).toBeCloseTo(best[0], 9);
    const needed = choice.runs.reduce((sum, { needed_m }) => sum + needed_m, 0);
    expect(needed).toBeCloseTo(best[1], 9);
    expect(choice.places_judged).toBeLessThan(choice.places);
  });

  it('lists pieces that are long enough, within stock, and adds them up', () => {
    const choice = chosen(task);
    const used = new Map<string, number>();
    for (const run of choice.runs) {
      expect(run.length_m).toBeGreaterThanOrEqual(run.needed_m);
      expect(run.margin_m).toBeCloseTo(run.length_m - run.needed_m, 12);
      for (const { id, count } of run.pieces) used.set(id, (used.get(id) ?? 0) + count);
    }
    for (const { id, count } of [...task.stock.leads, ...task.stock.hoses]) {
      const left = choice.left.find((each) => each.id === id)!;
      expect(left.count + (used.get(id) ?? 0)).toBe(count);
      expect(left.count).toBeGreaterThanOrEqual(0);
    }
    expect(choice.runs.reduce((sum, { loss_W }) => sum + loss_W, 0)).toBeCloseTo(choice.loss_W, 9);
    expect(choice.reach_margin_m).toBeGreaterThanOrEqual(0);
  });

  it('goes around an obstacle on the shortest way', () => {
    const wall = { id: 'wall', corners: box(4, 0, 1, 9) };
    const choice = chosen({
      ...task,
      bay: { ...task.bay, obstacles: [wall] },
      stock: {
        ...task.stock,
        leads: [{ id: 'lead 40 m', length: 40, count: 3, resistance: 2e-4 }],
        hoses: [{ id: 'hose 40 m', length: 40, count: 2, pressureLoss: 100 }],
      },
    });
    const clamp = choice.runs.find(({ run }) => run === 'source to work clamp')!;
    // Straight to the corners of the wall, over its top, and on.
    const way = Math.hypot(3, 4) + 1 + Math.hypot(9.5 - 5, 9 - 4.2);
    expect(clamp.needed_m).toBeCloseTo(way * 1.1 + 1.5, 9);
    expect(clamp.way).toHaveLength(4);
  });

  it('counts covers where ways cross a walkway', () => {
    const choice = chosen(variants[1]![1]);
    expect(choice.covers).toBeGreaterThan(0);
    expect(choice.covers).toBeLessThanOrEqual(4);
    expect(chosen(variants[2]![1]).covers).toBe(0);
  });

  it.each([
    [
      'leads too short',
      {
        ...task,
        stock: { ...task.stock, leads: [{ id: 'lead 8 m', length: 8, count: 3, resistance: 2e-4 }] },
      },
      /each run of leads is up to \d+\.\d m short/,
    ],
    [
      'hoses too short',
      {
        ...task,
        stock: { ...task.stock, hoses: [{ id: 'hose 5 m', length: 5, count: 2, pressureLoss: 1 }] },
      },
      /hoses is up to \d+\.\d m short/,
    ],
    ['no leads', { ...task, stock: { ...task.stock, leads: [] } }, /no leads in stock/],
    [
      'a walkway right across and no covers',
      { ...task, bay: { ...task.bay, walkways: [walkway] }, stock: { ...task.stock, covers: 0 } },
      /covers are needed and 0 are in stock/,
    ],
    [
      'a keep-out as wide as the bay',
      { ...task, bay: { ...task.bay, keepOut: 30 } },
      /keeps 30 m from the seam/,
    ],
    [
      'a wall right across',
      { ...task, bay: { ...task.bay, obstacles: [{ id: 'wall', corners: box(6, 0, 1, 10) }] } },
      /close off a part/,
    ],
  ] satisfies [string, StationTask, RegExp][])('refuses %s', (_, of, reason) => {
    expect(refusal(of)).toMatch(reason);
    expect(refusal(of)).toMatch(/^PLACE_NO_REACH/);
  });

  it.each([
    [
      'an outline of two corners',
      { ...task, bay: { ...task.bay, outline: task.bay.outline.slice(0, 2) } },
      /at least three/,
    ],
    [
      'a lead of no length',
      { ...task, stock: { ...task.stock, leads: [{ id: 'lead', length: 0, count: 1, resistance: 1 }] } },
      /length of 0 m/,
    ],
    [
      'a source inside an obstacle',
      { ...task, bay: { ...task.bay, powerSource: { x: 4.5, y: 4 } } },
      /inside press/,
    ],
    [
      'a seam outside the bay',
      {
        ...task,
        bay: {
          ...task.bay,
          seam: [
            { x: 9, y: 5 },
            { x: 19, y: 5 },
          ],
        },
      },
      /outside the bay/,
    ],
    ['a grid of zero', { ...task, grid: 0 }, /grid is 0/],
  ] satisfies [string, StationTask, RegExp][])('refuses %s', (_, of, reason) => {
    expect(refusal(of)).toMatch(reason);
    expect(refusal(of)).toMatch(/^PLACE_VALUE/);
  });

  it('refuses a grid that is too fine', () => {
    expect(refusal({ ...task, grid: 0.01 })).toMatch(/^SEARCH_TOO_LARGE/);
  });
});
