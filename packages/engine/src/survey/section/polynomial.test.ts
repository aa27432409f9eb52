import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fitPolynomial, polynomialAt, slopeAt, slopeVarianceAt, varianceAt } from './polynomial.ts';

function columns(file: string): [Float64Array, Float64Array] {
  const rows = readFileSync(new URL(`../../../../../published/${file}`, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => /^\s*-?[\d.]/u.test(line))
    .map((line) => line.split(',').map(Number));
  return [Float64Array.from(rows, (row) => row[0]!), Float64Array.from(rows, (row) => row[1]!)];
}

/** A plain fit whose points are independent, with the variance of one point as the source takes it. */
function fitted(x: Float64Array, y: Float64Array) {
  const fit = fitPolynomial(x, y, 1, false)!;
  return { ...fit, variance: fit.squares / fit.degrees };
}

describe('a straight line by least squares', () => {
  it('JCGM 100:2008 H.3, calibration of a thermometer: corrections at 20 and 30 degrees', () => {
    const [t, b] = columns('gum-h3.csv');
    const fit = fitted(t, b);
    expect(polynomialAt(fit, 20)).toBeCloseTo(-0.1712037901, 9);
    expect(Math.sqrt(varianceAt(fit, 20))).toBeCloseTo(0.002877597835, 9);
    expect(slopeAt(fit, 20)).toBeCloseTo(0.00218269774, 9);
    expect(Math.sqrt(slopeVarianceAt(fit, 20))).toBeCloseTo(0.0006679387732, 9);
    expect(Math.sqrt(fit.variance)).toBeCloseTo(0.003497563964, 9);
    expect(polynomialAt(fit, 30)).toBeCloseTo(-0.1493768127, 9);
    expect(Math.sqrt(varianceAt(fit, 30))).toBeCloseTo(0.004138595753, 9);
  });

  it('NIST StRD Norris: certified coefficients and their standard deviations', () => {
    const [y, x] = columns('strd-norris.csv');
    const fit = fitted(x, y);
    expect(polynomialAt(fit, 0)).toBeCloseTo(-0.262323073774029, 9);
    expect(slopeAt(fit, 0)).toBeCloseTo(1.00211681802045, 11);
    expect(Math.sqrt(varianceAt(fit, 0))).toBeCloseTo(0.232818234301152, 9);
    expect(Math.sqrt(slopeVarianceAt(fit, 0))).toBeCloseTo(0.000429796848199937, 11);
    expect(Math.sqrt(fit.variance)).toBeCloseTo(0.884796396144373, 9);
  });

  it('gives the same up to a parabola as for any order, and an inverse that is one', () => {
    const x = Float64Array.from({ length: 30 }, (_, i) => 0.3 * i - 2);
    const y = x.map((each, i) => 1 + 2 * each - 0.5 * each * each + 0.01 * Math.sin(7 * i));
    const low = fitPolynomial(x, y, 2, false)!;
    const high = fitPolynomial(x, y, 3, false)!;
    expect(polynomialAt(low, 1.1)).toBeCloseTo(polynomialAt(high, 1.1), 2);
    const t = x.map((each) => (each - low.centre) / low.scale);
    const normal = [0, 1, 2].map((i) =>
      [0, 1, 2].map((j) => t.reduce((sum, each) => sum + each ** (i + j), 0)),
    );
    for (const i of [0, 1, 2])
      for (const j of [0, 1, 2])
        expect(normal[i]!.reduce((sum, each, k) => sum + each * low.inverse[k]![j]!, 0)).toBeCloseTo(
          i === j ? 1 : 0,
          10,
        );
  });

  it('is none where the points say nothing of it', () => {
    expect(fitPolynomial(new Float64Array(5).fill(1), new Float64Array(5), 1)).toBeUndefined();
    expect(fitPolynomial(Float64Array.of(0, 1), Float64Array.of(0, 1), 1)).toBeUndefined();
  });
});
