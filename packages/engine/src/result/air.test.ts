import { expect, it } from 'vitest';
import { stateDrawdown } from './air.ts';

it('states the course of the receiver in the units of its keys', () => {
  const report = stateDrawdown(
    {
      samples: [
        { time: 0, receiver: 700_000, compressorOn: false, interval: 0 },
        { time: 260, receiver: 560_000, compressorOn: true, interval: 2 },
      ],
      lowest: 560_000,
      lowestByPass: [620_000, 560_000],
      lowestQuick: 530_000,
      lowestFlowing: 540_000,
      needed: 565_000,
      below: { time: 220, pass: 2, intoPass: 20, blown: 120 },
      belowQuick: undefined,
      compressorStarts: 3,
      cautions: [],
    },
    [
      { arc: true, duration: 100 },
      { arc: false, duration: 100 },
      { arc: true, duration: 60 },
    ],
    0.015,
  );
  expect(report).toMatchObject({
    receiver_kPa: [700, 560],
    passes: [
      { from_s: 0, to_s: 100, lowest_kPa: 620 },
      { from_s: 200, to_s: 260, lowest_kPa: 560 },
    ],
    lowest_kPa: 560,
    lowest_quick_kPa: 530,
    needed_kPa: 565,
    below_from_s: 220,
    below_from_pass: 2,
    below_from_mm: 300,
    compressor_starts: 3,
  });
});
