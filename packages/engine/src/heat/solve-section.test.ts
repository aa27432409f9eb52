import { describe, expect, it } from 'vitest';
import { thermalOf } from '../material/index.ts';
import { constantMetal, roundFloor, runOut } from './constant-metal.test-support.ts';
import type { SectionHeatInput } from './section-heat.ts';
import { solveSection } from './solve-section.ts';

const ROOM = 293.15;
const BASE: SectionHeatInput = {
  metal: thermalOf('carbon_steel'),
  thickness: 0.032,
  ambient: ROOM,
  start: ROOM,
  losses: 'film_and_radiation',
  passes: [
    { at: 0, duration: 1.2, floor: roundFloor(0.008, 0.006), keptPerLength: 6e5 },
    { at: 30, duration: 1.2, floor: roundFloor(0.008, 0.012), keptPerLength: 6e5 },
  ],
  until: 900,
  frameTimes: [0, 0.6, 20, 31, 900],
  quality: 'quick',
};
const solve = (change: Partial<SectionHeatInput> = {}) => runOut(solveSection({ ...BASE, ...change }));
const surfaceMiddle = (points: readonly { offset: number; t85: number }[]): number =>
  points.reduce((best, point) => (Math.abs(point.offset) < Math.abs(best.offset) ? point : best)).t85;

describe('a section through its passes', () => {
  const { value, yielded } = solve();

  it('tells how far it is, ever further, up to the end', () => {
    expect(yielded.length).toBeGreaterThan(20);
    yielded.forEach((share, at) => {
      expect(share).toBeGreaterThanOrEqual(yielded[at - 1] ?? 0);
    });
    expect(yielded.at(-1)).toBe(1);
  });

  it('shows the frames asked for, each with the groove of its time', () => {
    expect(value.frames.map(({ time, pass }) => [time, pass])).toEqual([
      [0, 0],
      [0.6, 1],
      [20, 1],
      [31, 2],
      [900, 2],
    ]);
    const middle = value.across.findIndex((offset) => offset > 0);
    expect(value.frames.map(({ floor }) => Math.round(floor[middle]! * 1e3))).toEqual([0, 6, 6, 12, 12]);
    const columns = value.across.length;
    const atDepth = (depth: number): number =>
      value.below.findIndex((each) => each > depth) * columns + middle;
    expect(value.frames[2]!.temperature[atDepth(0.009)]).toBeGreaterThan(ROOM);
    expect(value.frames[3]!.temperature[atDepth(0.009)]).toBeNaN();
    expect(value.peak[atDepth(0.009)]).toBeNaN();
  });

  it('mirrors a groove that is its own mirror', () => {
    const columns = value.across.length;
    value.peak.forEach((hot, cell) => {
      const other = value.peak[cell - (cell % columns) + columns - 1 - (cell % columns)]!;
      if (!Number.isNaN(hot)) expect(Math.abs(hot - other)).toBeLessThan(0.02 * hot);
    });
  });

  it('keeps what a pass adds beside the groove and at the back in order', () => {
    expect(value.beforePass[0]).toBeCloseTo(ROOM, 3);
    expect(value.beforePass[1]).toBeGreaterThan(ROOM + 20);
    expect(value.waits).toEqual([0, 0]);
    const hottest = Math.max(...value.peak.filter((hot) => !Number.isNaN(hot)));
    expect(value.backFacePeak).toBeLessThan(hottest);
    expect(value.surface.every(({ depth }) => depth >= 0 && depth <= 0.012 + 1e-9)).toBe(true);
  });

  it('is the same in plain TypeScript, bit for bit', () => {
    const plain = solve({
      form: 'typescript',
      passes: BASE.passes.slice(0, 1),
      until: 5,
      frameTimes: [5],
    }).value;
    const fast = solve({ passes: BASE.passes.slice(0, 1), until: 5, frameTimes: [5] }).value;
    expect([fast.form, plain.form]).toEqual(['webassembly', 'typescript']);
    expect(plain.frames).toEqual(fast.frames);
    expect(plain.surface).toEqual(fast.surface);
    expect(plain.balance).toEqual(fast.balance);
  });
});

describe('waiting for the interpass temperature', () => {
  const most = ROOM + 60;
  const waiting = solve({ interpassMost: most });

  it('holds the pass until the surface beside the groove is no hotter, and shifts what follows', () => {
    const { waits, startedAt, beforePass, frames } = waiting.value;
    expect(waits[0]).toBe(0);
    expect(waits[1]).toBeGreaterThan(5);
    expect(startedAt[1]).toBeCloseTo(30 + waits[1]!, 6);
    expect(beforePass[1]).toBeLessThanOrEqual(most + 0.1);
    expect(beforePass[1]).toBeGreaterThan(most - 0.2);
    expect(frames.at(-1)!.time).toBeCloseTo(900 + waits[1]!, 6);
    expect(frames.every(({ time }, at) => at === 0 || time > frames[at - 1]!.time)).toBe(true);
  });

  it('waits longer for a colder plate', () => {
    const colder = solve({ interpassMost: ROOM + 45 }).value.waits[1]!;
    expect(colder).toBeGreaterThan(waiting.value.waits[1]!);
  });

  it('says so when the plate cannot get so cool', () => {
    expect(solve({ interpassMost: ROOM - 1 }).value.waits).toEqual([0, Number.POSITIVE_INFINITY]);
    // heat that cannot leave spreads and stays
    const closed = solve({ interpassMost: ROOM + 5, losses: 'none', halfWidth: 0.15 }).value;
    expect(closed.waits[1]).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('grids', () => {
  it('agree: the refined one says how far it is off, and the quick one is near it', () => {
    const passes = BASE.passes.slice(0, 1);
    const quick = solve({ passes, until: 60, frameTimes: [] }).value;
    const fine = solve({ passes, until: 60, frameTimes: [], quality: 'refined' }).value;
    expect(quick.gridError).toBeNull();
    expect(fine.gridError).toBeGreaterThan(0);
    expect(fine.gridError).toBeLessThan(0.04);
    expect(Math.abs((quick.backFacePeak - ROOM) / (fine.backFacePeak - ROOM) - 1)).toBeLessThan(0.01);
    expect(Math.abs(surfaceMiddle(quick.surface) / surfaceMiddle(fine.surface) - 1)).toBeLessThan(0.02);
  });

  it('hold the heat of a plate that is shut off: given is stored and cut out, and evens out', () => {
    const { value } = solve({
      metal: constantMetal(),
      losses: 'none',
      halfWidth: 0.1,
      passes: [{ at: 0, duration: 1, floor: roundFloor(0.008, 0.006), keptPerLength: 4e5 }],
      until: 7200,
      frameTimes: [7200],
    });
    expect(value.balance.lost).toBe(0);
    const area = 0.2 * 0.032 - grooveArea(0.008, 0.006);
    const even = ROOM + value.balance.stored / (4e6 * area);
    for (const hot of value.frames[0]!.temperature) {
      if (!Number.isNaN(hot)) expect(Math.abs(hot - even)).toBeLessThan(0.1);
    }
  });
});

function grooveArea(radius: number, depth: number): number {
  const high = radius - depth;
  return radius ** 2 * Math.acos(high / radius) - high * Math.sqrt(radius ** 2 - high ** 2);
}
