import { readFileSync } from 'node:fs';
import {
  drawStream,
  fitRadius,
  fitRemovalPrior,
  normalQuantile,
  predict,
  type RegressionBelief,
  studentProbability,
  studentQuantile,
  updateBelief,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { PROCESS_ROWS } from './process-rows.ts';

/**
 * SciPy and NumPy, versions in the head of scipy-statistics.csv, run by scipy-statistics.py: quantiles and
 * probabilities of Student's t, normal quantiles, gamma moments, the conjugate update by stacked least squares,
 * the circle fit. Each tolerance below is what was reached, rounded up.
 */
interface Line {
  readonly kind: string;
  readonly given: readonly number[];
  readonly wanted: readonly number[];
}

const LINES: readonly Line[] = readFileSync(new URL('./scipy-statistics.csv', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => {
    const [kind = '', given = '', wanted = ''] = line.split('|');
    return { kind, given: given.split(' ').map(Number), wanted: wanted.split(' ').map(Number) };
  });

const linesOf = (kind: string): readonly Line[] => {
  const lines = LINES.filter((line) => line.kind === kind);
  expect(lines.length, kind).toBeGreaterThan(0);
  return lines;
};

/** Greatest difference, relative where the wanted number is above 1. */
function worst(lines: readonly Line[], got: (line: Line) => readonly number[]): number {
  return Math.max(
    ...lines.flatMap((line) => {
      const values = got(line);
      expect(values).toHaveLength(line.wanted.length);
      return line.wanted.map((wanted, i) => Math.abs(values[i]! - wanted) / Math.max(1, Math.abs(wanted)));
    }),
  );
}

describe('Student’s t against scipy.stats.t', () => {
  it('quantiles agree to 2e-7 and, from 1 % to 99 %, to 1e-7', () => {
    const lines = linesOf('t_quantile');
    const quantile = ({ given: [share, degrees] }: Line): number[] => [studentQuantile(share!, degrees!)];
    expect(lines.length).toBe(15 * 16);
    expect(worst(lines, quantile)).toBeLessThan(2e-7);
    expect(
      worst(
        lines.filter(({ given: [share] }) => share! >= 0.01 && share! <= 0.99),
        quantile,
      ),
    ).toBeLessThan(1e-7);
  });

  it('probabilities agree to 5e-8', () => {
    expect(
      worst(linesOf('t_probability'), ({ given: [t, degrees] }) => [studentProbability(t!, degrees!)]),
    ).toBeLessThan(5e-8);
  });
});

it('normal quantiles agree with scipy.stats.norm to 1e-14, down to 1e-300', () => {
  expect(worst(linesOf('normal_quantile'), ({ given: [share] }) => [normalQuantile(share!)])).toBeLessThan(
    1e-14,
  );
});

describe('gamma draws against scipy.stats.gamma', () => {
  const COUNT = 60_000;
  const draws = (shape: number): number[] => {
    const stream = drawStream(20);
    return Array.from({ length: COUNT }, () => stream.gamma(shape));
  };

  it.each(LINES.filter(({ kind }) => kind === 'gamma_moments'))(
    'moments at shape $given',
    ({ given, wanted }) => {
      const [mean, variance, skewness, kurtosis] = wanted as [number, number, number, number];
      const sample = draws(given[0]!);
      const average = (power: number, about = 0): number =>
        sample.reduce((sum, value) => sum + (value - about) ** power, 0) / COUNT;
      const standardError = Math.sqrt(variance / COUNT);
      expect(Math.abs(average(1) - mean)).toBeLessThan(4 * standardError);
      const ofVariance = variance * Math.sqrt((kurtosis + 2) / COUNT);
      expect(Math.abs(average(2, mean) - variance)).toBeLessThan(4 * ofVariance);
      expect(Math.abs(average(3, mean) / variance ** 1.5 - skewness)).toBeLessThan(
        0.1 * Math.max(1, skewness),
      );
    },
  );

  it.each(LINES.filter(({ kind }) => kind === 'gamma_quantiles'))(
    'quantiles at shape $given',
    ({ given, wanted }) => {
      const [shape, ...shares] = given;
      const sample = draws(shape!);
      shares.forEach((share, i) => {
        const below = sample.filter((value) => value <= wanted[i]!).length / COUNT;
        expect(Math.abs(below - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / COUNT));
      });
    },
  );
});

describe('the conjugate update against numpy.linalg.lstsq and inv', () => {
  /** Belief, observations and the point predicted at, as scipy-statistics.py lists them. */
  function unpack(given: readonly number[]) {
    let at = 2;
    const [size, count] = given as [number, number];
    const take = (length: number): number[] => {
      at += length;
      return given.slice(at - length, at);
    };
    const rows = (numbers: number[]): number[][] =>
      Array.from({ length: numbers.length / size }, (_, i) => numbers.slice(i * size, (i + 1) * size));
    const mean = take(size);
    const precision = rows(take(size * size));
    const [shape, scale] = take(2) as [number, number];
    const belief: RegressionBelief = { mean, precision, shape, scale };
    const x = rows(take(size * count));
    const y = take(count);
    return { belief, observations: x.map((row, i) => ({ x: row, y: y[i]! })), point: take(size) };
  }

  function flat(belief: RegressionBelief, point: readonly number[]): number[] {
    const { location, spread, degrees } = predict(belief, point);
    const edge = location + spread * studentQuantile(0.95, degrees);
    return [...belief.mean, ...belief.precision.flat(), belief.shape, belief.scale, location, spread, edge];
  }

  const updated = ({ given }: Line): number[] => {
    const { belief, observations, point } = unpack(given);
    return flat(updateBelief(belief, observations), point);
  };

  it('agrees to 5e-8 on invented data, to 1e-12 but for the t quantile', () => {
    expect(worst(linesOf('conjugate_update'), updated)).toBeLessThan(5e-8);
    const exact = linesOf('conjugate_update').map((line) => ({ ...line, wanted: line.wanted.slice(0, -1) }));
    expect(worst(exact, (line) => updated(line).slice(0, -1))).toBeLessThan(1e-12);
  });

  it('agrees to 1e-8 on the operating rows, read from process.json by another program', () => {
    const lines = linesOf('depth_law');
    expect(worst(lines, updated)).toBeLessThan(1e-8);
    // The committed fit differs from it by nothing but the widening of the scale.
    const { depth } = fitRemovalPrior(PROCESS_ROWS, 10e9);
    const [{ wanted }] = lines as [Line];
    [...depth.mean, ...depth.precision.flat(), depth.shape].forEach((value, i) => {
      expect(value).toBeCloseTo(wanted[i]!, 9);
    });
    expect(depth.scale).toBeGreaterThan(wanted[13]!);
  });
});

describe('the circle fit', () => {
  const radiusOf = ({ given }: Line): number =>
    fitRadius(
      Array.from({ length: given.length / 2 }, (_, i) => ({
        offset: given[2 * i]!,
        depth: given[2 * i + 1]!,
      })),
    )!;

  it('agrees with the same fit by numpy.linalg.lstsq to 1e-10', () => {
    for (const line of linesOf('circle_fit'))
      expect(Math.abs(radiusOf(line) / line.wanted[0]! - 1)).toBeLessThan(1e-10);
  });

  it('agrees with the geometric fit by scipy.optimize.least_squares to 0.2 %', () => {
    for (const line of linesOf('circle_fit'))
      expect(Math.abs(radiusOf(line) / line.wanted[1]! - 1)).toBeLessThan(2e-3);
  });
});
