import { describe, expect, it } from 'vitest';
import { rowNear, rowOf } from './reading-table.ts';

describe('The row of a reading', () => {
  it('holds from its lower edge on, up to its upper one', () => {
    const table = { edges: [5e-3, 6e-3], readings: [4e-3, 5.5e-3, 7e-3], logEnergy: [1, 2, 3] };
    expect([0, 4.99e-3, 5e-3, 5.9e-3, 6e-3, 1].map((reading) => rowOf(table, reading))).toEqual([
      0, 0, 1, 1, 2, 2,
    ]);
  });

  it('is the same from whichever row it is sought', () => {
    const edges = [1, 2, 2.5, 7];
    for (const reading of [-1, 1, 1.5, 2, 2.4, 2.5, 6.9, 7, 100]) {
      const row = rowOf({ edges, readings: [], logEnergy: [] }, reading);
      for (let guess = 0; guess <= edges.length; guess += 1) {
        expect(rowNear(edges, reading, guess)).toBe(row);
      }
    }
  });
});
