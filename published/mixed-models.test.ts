import { readFileSync } from 'node:fs';
import {
  evenWeights,
  type NestedGroup,
  type NestedModel,
  type NestedPrior,
  type NestedSds,
  nestedModel,
  predict,
  solveNested,
  spreadMode,
  updateBelief,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';

/** The most probable standard deviations by a criterion, those that are not asked for held at 0. */
function fitted(
  model: NestedModel,
  free: readonly (keyof NestedSds)[],
  start: readonly number[],
  criterion: 'logMarginal' | 'logProfile',
): { sds: NestedSds; mean: readonly number[]; errors: number[] } {
  const sdsOf = (values: readonly number[]): NestedSds => {
    const sds = { group: 0, pass: 0, seam: 0 };
    free.forEach((level, i) => {
      sds[level] = values[i]!;
    });
    return sds;
  };
  const solve = (values: readonly number[]) =>
    solveNested(model, sdsOf(values), undefined, evenWeights(model));
  const mode = spreadMode((values) => solve(values)[criterion], start);
  const { mean, covariance } = solve(mode.sds);
  return { sds: sdsOf(mode.sds), mean, errors: covariance().map((row, i) => Math.sqrt(row[i]!)) };
}

/** One reading as a pass of its own, without noise: what is left over is the pass level. */
const single = (value: number, regressors: readonly number[] = [1], variance = 0) => ({
  columns: regressors.map((_, i) => i),
  regressors,
  readings: [{ place: 0, value, variance }],
});

describe('Dyestuff (Davies and Goldsmith, Statistical Methods in Research and Production, 1972; data from memory)', () => {
  const batches = [
    [1545, 1440, 1440, 1520, 1580],
    [1540, 1555, 1490, 1560, 1495],
    [1595, 1550, 1605, 1510, 1560],
    [1445, 1440, 1595, 1465, 1545],
    [1595, 1630, 1515, 1635, 1625],
    [1520, 1455, 1450, 1480, 1445],
  ];
  const model = nestedModel(
    batches.map((batch): NestedGroup => batch.map((value) => single(value))),
    1,
    1,
  );

  it('REML: between batches 1764.05, within 2451.25, mean 1527.5 with standard error 19.383', () => {
    const { sds, mean, errors } = fitted(model, ['group', 'pass'], [20, 80], 'logMarginal');
    expect(sds.group ** 2 / 1764.05).toBeCloseTo(1, 3);
    expect(sds.pass ** 2 / 2451.25).toBeCloseTo(1, 3);
    expect(mean[0]).toBeCloseTo(1527.5, 6);
    expect(errors[0]).toBeCloseTo(19.383, 2);
  });

  it('ML: between batches 1388.33', () => {
    const { sds } = fitted(model, ['group', 'pass'], [20, 80], 'logProfile');
    expect(sds.group ** 2 / 1388.33).toBeCloseTo(1, 3);
  });
});

describe('random effects of 13 trials (readme of the R package metafor; counts from memory, held by its Q and REML)', () => {
  const counts = [
    [4, 119, 11, 128],
    [6, 300, 29, 274],
    [3, 228, 11, 209],
    [62, 13536, 248, 12619],
    [33, 5036, 47, 5761],
    [180, 1361, 372, 1079],
    [8, 2537, 10, 619],
    [505, 87886, 499, 87892],
    [29, 7470, 45, 7232],
    [17, 1699, 65, 1600],
    [186, 50448, 141, 27197],
    [5, 2493, 3, 2338],
    [27, 16886, 29, 17825],
  ] as const;
  const trials = counts.map(([a, b, c, d]) => ({
    value: Math.log(a / (a + b) / (c / (c + d))),
    variance: 1 / a - 1 / (a + b) + 1 / c - 1 / (c + d),
  }));
  const model = nestedModel(
    trials.map(({ value, variance }): NestedGroup => [single(value, [1], variance)]),
    1,
    1,
  );

  it('REML: variance 0.31324326, estimate -0.71453234, standard error 0.17978', () => {
    const { sds, mean, errors } = fitted(model, ['group'], [0.2], 'logMarginal');
    expect(sds.group ** 2).toBeCloseTo(0.31324326, 4);
    expect(mean[0]).toBeCloseTo(-0.71453234, 4);
    expect(errors[0]).toBeCloseTo(0.17978, 4);
    expect(mean[0]! - 1.959964 * errors[0]!).toBeCloseTo(-1.0669, 3);
  });

  it('Q of no spread between trials: 152.2330', () => {
    const { mean } = solveNested(model, { group: 0, pass: 0, seam: 0 }, undefined, evenWeights(model));
    const q = trials.reduce((sum, { value, variance }) => sum + (value - mean[0]!) ** 2 / variance, 0);
    expect(q).toBeCloseTo(152.233, 3);
  });
});

describe('eight effects with normal and half-Cauchy priors (stan-dev/posteriordb; exact by quadrature)', () => {
  const effects = [28, 8, -3, 7, -1, 1, 18, 12];
  const errors = [15, 10, 16, 11, 9, 11, 10, 18];
  // The common mean is coefficient 0; each effect's distance from it is a coefficient of its own, as families are.
  const model = nestedModel(
    effects.map(
      (value, i): NestedGroup => [
        {
          columns: [0, i + 1],
          regressors: [1, 1],
          readings: [{ place: 0, value, variance: errors[i]! ** 2 }],
        },
      ],
    ),
    9,
    1,
  );
  const priorOf = (tau: number): NestedPrior => ({
    mean: new Array<number>(9).fill(0),
    precision: Array.from({ length: 9 }, (_, r) =>
      Array.from({ length: 9 }, (__, c) => (r === c ? 1 / (r === 0 ? 25 : tau ** 2) : 0)),
    ),
  });

  it('mean 4.3968 (sd 3.3177), spread 3.5978, effects 6.212 4.940 3.927 4.757 3.615 4.043 6.297 4.854', () => {
    const step = 0.02;
    let [total, mu, mu2, spread] = [0, 0, 0, 0];
    const theta = new Array<number>(8).fill(0);
    for (let log = -7; log <= 6; log += step) {
      const tau = Math.exp(log);
      const solved = solveNested(model, { group: 0, pass: 0, seam: 0 }, priorOf(tau), evenWeights(model));
      const weight = (Math.exp(solved.logMarginal) * tau) / (1 + (tau / 5) ** 2);
      total += weight;
      mu += weight * solved.mean[0]!;
      mu2 += weight * (solved.covariance()[0]![0]! + solved.mean[0]! ** 2);
      spread += weight * tau;
      for (let i = 0; i < 8; i += 1) theta[i]! += weight * (solved.mean[0]! + solved.mean[i + 1]!);
    }
    expect(mu / total).toBeCloseTo(4.3968, 3);
    expect(Math.sqrt(mu2 / total - (mu / total) ** 2)).toBeCloseTo(3.3177, 3);
    expect(spread / total).toBeCloseTo(3.5978, 2);
    [6.212, 4.94, 3.927, 4.757, 3.615, 4.043, 6.297, 4.854].forEach((value, i) => {
      expect(theta[i]! / total).toBeCloseTo(value, 2);
    });
  });
});

describe('the nested gauge study of NIST (e-Handbook 2.6.1, public domain, nist-mpc61.dat), probe 2362', () => {
  const rows = readFileSync(new URL('./nist-mpc61.dat', import.meta.url), 'utf8')
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter((row) => row.length === 9 && row.every(Number.isFinite) && row[2] === 2362);
  const wafers = [...new Set(rows.map((row) => row[1]!))];

  it('level 1 is 0.0729: pooled within the days', () => {
    const pooled = Math.sqrt(rows.reduce((sum, row) => sum + row[8]! ** 2, 0) / rows.length);
    expect(pooled).toBeCloseTo(0.0729, 3);
  });

  it('level 2, between days, is 0.0362 and level 3, between runs, 0.0196 (derived)', () => {
    const groups = wafers.flatMap((wafer, column) =>
      [1, 2].map(
        (run): NestedGroup =>
          rows
            .filter((row) => row[0] === run && row[1] === wafer)
            .map((row) => ({ ...single(row[7]!), columns: [column] })),
      ),
    );
    const days = groups[0]!.length;
    expect(days).toBe(6);
    const { sds } = fitted(
      nestedModel(groups, wafers.length, 1),
      ['group', 'pass'],
      [0.02, 0.03],
      'logMarginal',
    );
    expect(sds.pass).toBeCloseTo(0.0362, 3);
    expect(Math.sqrt(sds.group ** 2 + sds.pass ** 2 / days)).toBeCloseTo(0.0196, 3);
  });
});

describe('lme4 on invented, uneven data (lme4-mixed-models.csv, made by lme4-mixed-models.R)', () => {
  const lines = readFileSync(new URL('./lme4-mixed-models.csv', import.meta.url), 'utf8')
    .split('\n')
    .map((line) => line.split('|'));
  const fits = lines.filter(([kind]) => kind === 'fit');

  it('has both methods of both sets', () => {
    expect(fits).toHaveLength(4);
  });

  it.each(fits.map((fit) => [fit[1]!, fit[2]!, fit.slice(3).map(Number)] as const))(
    '%s, %s',
    (set, method, told) => {
      const data = lines
        .filter(([kind, name]) => kind === 'data' && name === set)
        .map((line) => line.slice(2).map(Number));
      const [group, pass, residual, ...coefficients] = told as [number, number, number, ...number[]];
      // The residual is the noise of the readings here, so it is taken as told and the two levels above are fitted.
      const groups = [...new Set(data.map((row) => row[0]))].map((g): NestedGroup => {
        const own = data.filter((row) => row[0] === g);
        return [...new Set(own.map((row) => row[1]))].map((p) => {
          const readings = own.filter((row) => row[1] === p);
          return {
            columns: [0, 1],
            regressors: [1, readings[0]![2]!],
            readings: readings.map((row, place) => ({ place, value: row[3]!, variance: residual ** 2 })),
          };
        });
      });
      const { sds, mean, errors } = fitted(
        nestedModel(groups, 2, 1),
        ['group', 'pass'],
        [0.3, 0.3],
        method === 'REML' ? 'logMarginal' : 'logProfile',
      );
      expect(sds.group / group).toBeCloseTo(1, 3);
      expect(sds.pass / pass).toBeCloseTo(1, 2);
      [mean[0]!, mean[1]!, ...errors].forEach((value, i) => {
        expect(value / coefficients[i]!).toBeCloseTo(1, 3);
      });
    },
  );
});

describe('the conjugate update (normal-inverse-gamma m 10, k 2, a 3, b 0.5; y 9.8 10.1 10.4 9.9; recomputed)', () => {
  const before = { mean: [10], precision: [[2]], shape: 3, scale: 0.5 };
  const seen = [9.8, 10.1, 10.4, 9.9].map((y) => ({ x: [1], y }));

  it('comes to 10.033333, 6, 5, 0.60666667', () => {
    const { mean, precision, shape, scale } = updateBelief(before, seen);
    expect(mean[0]).toBeCloseTo(10.033333, 6);
    expect(precision[0]![0]).toBeCloseTo(6, 12);
    expect(shape).toBe(5);
    expect(scale).toBeCloseTo(0.60666667, 8);
  });

  it('has the log evidence -1.3207162311 as sum of one-step log predictives', () => {
    let belief = before as ReturnType<typeof updateBelief>;
    let sum = 0;
    for (const one of seen) {
      const { location, spread, degrees } = predict(belief, one.x);
      sum += logStudent((one.y - location) / spread, degrees) - Math.log(spread);
      belief = updateBelief(belief, [one]);
    }
    expect(sum).toBeCloseTo(-1.3207162311, 7);
  });
});

/** ln density of Student's t, the ratio of gamma functions by their recurrence. */
function logStudent(t: number, degrees: number): number {
  return (
    logGamma((degrees + 1) / 2) -
    logGamma(degrees / 2) -
    0.5 * Math.log(degrees * Math.PI) -
    ((degrees + 1) / 2) * Math.log1p((t * t) / degrees)
  );
}

/** ln gamma at a multiple of one half. */
function logGamma(x: number): number {
  let sum = 0;
  let at = x;
  while (at > 1.25) {
    at -= 1;
    sum += Math.log(at);
  }
  return sum + (at < 0.75 ? 0.5 * Math.log(Math.PI) : 0);
}
