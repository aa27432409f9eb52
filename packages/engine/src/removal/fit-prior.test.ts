import { describe, expect, it } from 'vitest';
import { drawStream } from '../numeric/index.ts';
import { fitRemovalPrior, type RemovalRow } from './fit-prior.ts';
import { specificEnergy } from './setting.ts';

const MELTING_ENERGY = 10e9;

/** Rows of an invented law ln(h / D) = -0.8 + 1.4 ln q, with noise. */
function rowsOf(noise: number, count: number): RemovalRow[] {
  const stream = drawStream(71);
  return Array.from({ length: count }, (_, i) => {
    const setting = {
      diameter: 0.008 + 0.002 * (i % 4),
      current: 300 + 250 * (i % 4),
      voltage: 42,
      travel: 0.008 + 0.015 * stream.uniform(),
      pushAngle: Math.PI / 4,
    };
    const q = specificEnergy(setting, MELTING_ENERGY);
    const depth = setting.diameter * Math.exp(-0.8 + 1.4 * Math.log(q) + noise * stream.normal());
    return { id: `row ${i}`, setting, depth, width: setting.diameter + 0.004, wear: 0.002 };
  });
}

describe('fitRemovalPrior', () => {
  it('finds the law behind rows', () => {
    const { depth } = fitRemovalPrior(rowsOf(0.02, 60), MELTING_ENERGY);
    expect(depth.mean[0]).toBeCloseTo(-0.8, 1);
    expect(depth.mean[1]).toBeCloseTo(1.4, 1);
    // No row has another angle than 45 degrees, so nothing is learnt of it.
    expect(depth.mean[2]).toBeCloseTo(0.05, 9);
  });

  it('takes width and wear from the rows that have them', () => {
    const rows = rowsOf(0.1, 8).map(({ width: _width, ...row }, i) =>
      i < 2 ? { ...row, width: row.setting.diameter + 0.005 } : row,
    );
    const { extraWidth, wear } = fitRemovalPrior(rows, MELTING_ENERGY);
    expect(extraWidth.precision).toEqual([[3]]);
    expect(extraWidth.mean[0]).toBeCloseTo((0.0032 + 2 * 0.005) / 3, 12);
    expect(wear.precision).toEqual([[9]]);
  });
});
