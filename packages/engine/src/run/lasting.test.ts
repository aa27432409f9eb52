import { describe, expect, it } from 'vitest';
import { ARC, type ArcStateCode, nextState, OFF } from './arc-state.ts';
import { Lasting, type Stretch } from './lasting.ts';

/** Amps at 10 Hz; on from 300 A, off below 150 A. Example of our own, worked by hand. */
const AMPS = [0, 0, 480, 505, 498, 120, 510, 502, 0, 0, 0, 495, 490, 0];
const LEVELS = {
  currentOn: 300,
  currentOff: 150,
  shortBelow: 0,
  shortUntil: 0,
  openAbove: 0,
  openUntil: 0,
  offBelow: 0,
};

function found(bridge: number, least: number): number[][] {
  const rows: number[][] = [];
  const lasting = new Lasting(bridge, least, ({ from, to }: Stretch) => {
    rows.push([from.row, to.row]);
  });
  let state: ArcStateCode = OFF;
  AMPS.forEach((amps, row) => {
    state = nextState(state, Number.NaN, amps, LEVELS);
    lasting.row(state === ARC, row * 0.1, row, 0);
  });
  lasting.end(AMPS.length * 0.1, AMPS.length, 0);
  return rows;
}

describe('where a condition lasts', () => {
  it('is half open, and ends with the hysteresis', () => {
    expect(found(0, 0)).toEqual([
      [2, 5],
      [6, 8],
      [11, 13],
    ]);
  });

  it('bridges gaps shorter than two rows first, and drops what is then shorter than two rows', () => {
    expect(found(0.2, 0.2)).toEqual([
      [2, 8],
      [11, 13],
    ]);
  });

  it('does not bridge a gap of just that length', () => {
    expect(found(0.1, 0).length).toBe(3);
  });

  it('drops what is shorter than asked only after bridging', () => {
    expect(found(0.2, 0.3)).toEqual([[2, 8]]);
    expect(found(0, 0.3)).toEqual([[2, 5]]);
  });
});
