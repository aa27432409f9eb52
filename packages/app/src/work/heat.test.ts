import type { Answer, HeatAnswer, ReadJob } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { fieldBuffers, type HeatTools, heatParts } from './heat.ts';

const REQUEST = { read: {} as ReadJob, answer: {} as Answer, station: 0.2 };

/** Solves in three steps of 50 ms each. */
function tools(change: Partial<HeatTools> = {}): HeatTools {
  let clock = 0;
  return {
    *solve(_read, _answer, { quality, station }) {
      for (const share of [0.25, 0.5, 0.75]) {
        clock += 50;
        yield share;
      }
      return { report: { quality, station } } as unknown as HeatAnswer;
    },
    now: () => clock,
    ...change,
  };
}

describe('heatParts', () => {
  it('gives a quick look, then the refined answer, with progress on the way to each', () => {
    const shares = [0.25, 0.5, 0.75].map((share) => ({ is: 'progress', share }));
    const answered = (quality: string) => ({
      is: 'part',
      part: { quality, heat: { report: { quality, station: 0.2 } }, took_ms: 150 },
    });
    expect([...heatParts(REQUEST, tools())]).toEqual([
      ...shares,
      answered('quick'),
      ...shares,
      answered('refined'),
    ]);
  });

  it('gives no part where there is no plan, and breaks where the solver does', () => {
    const solved = (solve: HeatTools['solve']) => [...heatParts(REQUEST, tools({ solve }))];
    expect(
      solved(function* () {
        yield 0;
        return null;
      }),
    ).toEqual([{ is: 'progress', share: 0 }]);
    expect(() =>
      solved(function* () {
        yield 0;
        throw new Error('no such metal');
      }),
    ).toThrow('no such metal');
  });
});

describe('fieldBuffers', () => {
  it('names the memory of every list of the field once', () => {
    const lists = [1, 2, 3].map((length) => new Float64Array(length));
    const [across, below, temperature] = lists as [Float64Array, Float64Array, Float64Array];
    const frames = [{ temperature, floor: across }];
    const heat = { field: { across, below, frames } } as unknown as HeatAnswer;
    expect(fieldBuffers({ quality: 'quick', heat, took_ms: 1 })).toEqual(lists.map(({ buffer }) => buffer));
  });
});
