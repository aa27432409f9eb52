import { describe, expect, it } from 'vitest';
import { torchPlace } from './torch-place.ts';

// 6 m at 0.01 m/s with one change at 4 m that takes 40 s; at 3 m after 310 s, so the arc starts at 10 s
const pass = { number: 1, at: 310, travel: 0.01, changes: [4] };
const course = { station: 3, from: 0, to: 6, changeTime: 40 };
const at = (time: number): number | undefined => torchPlace([pass], course, time)?.place;

describe('torchPlace', () => {
  it('is at the station when the timetable says so', () => {
    expect(at(310)).toBeCloseTo(3, 9);
  });

  it('travels at the pass’s speed, stands at a change and goes on', () => {
    expect(at(10)).toBeCloseTo(0, 9);
    expect(at(409)).toBeCloseTo(3.99, 9);
    expect(at(430)).toBeCloseTo(4, 9);
    expect(at(550)).toBeCloseTo(5, 9);
    expect(at(649)).toBeCloseTo(5.99, 9);
  });

  it('is nowhere before and between passes, and in the next pass after that', () => {
    const next = { number: 2, at: 1210, travel: 0.01, changes: [] };
    expect(torchPlace([pass, next], course, 5)).toBeUndefined();
    expect(torchPlace([pass, next], course, 700)).toBeUndefined();
    expect(torchPlace([pass, next], course, 1010)).toEqual({ pass: 2, place: expect.closeTo(1, 9) });
  });

  it('counts the changes that lie before the station', () => {
    const far = { ...course, station: 5 };
    const timed = { ...pass, at: 550 };
    expect(torchPlace([timed], far, 310)?.place).toBeCloseTo(3, 9);
  });
});
