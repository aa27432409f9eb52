import { readFileSync } from 'node:fs';
import {
  conditionGaussian,
  fuseSeam,
  gaugeStudy,
  inspectionRisk,
  nestedStudy,
  propagate,
  propagateByDraws,
  readingBudget,
  type StudyReading,
  seamCorrelation,
  studentQuantile,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';

function numbers(file: string): number[][] {
  return readFileSync(new URL(file, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => /^\s*[\d-]/u.test(line))
    .map((line) =>
      line
        .trim()
        .split(/[,\s]+/u)
        .map(Number),
    );
}

/** Seven points and a target of Isaaks and Srivastava, An Introduction to Applied Geostatistics (1989), chapter 12; computed again. */
const POINTS = [
  [61, 139, 477],
  [63, 140, 696],
  [64, 129, 227],
  [68, 128, 646],
  [71, 140, 606],
  [73, 141, 791],
  [75, 128, 783],
] as const;

describe('ordinary kriging of the geostatistics textbook', () => {
  const kriged = (covariance: (h: number) => number) => {
    const distance = (a: readonly number[], b: readonly number[]): number =>
      Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!);
    const target = [65, 137];
    return conditionGaussian(
      {
        read: POINTS.map((a) => POINTS.map((b) => covariance(distance(a, b)))),
        across: [POINTS.map((a) => covariance(distance(a, target)))],
        asked: [covariance(0)],
      },
      POINTS.map(([, , value]) => value),
      POINTS.map(() => 0),
      'unknown',
    );
  };

  it.each([
    ['10 exp(-0.3 h)', (h: number) => 10 * Math.exp(-0.3 * h), 592.7289428, 8.9560528],
    ['20 exp(-0.3 h)', (h: number) => 20 * Math.exp(-0.3 * h), 592.7289428, 17.9121056],
    ['10 exp(-3 (h/10)^2)', (h: number) => 10 * Math.exp(-3 * (h / 10) ** 2), 559.3700232, 4.7805974],
    [
      'nugget 5 + 5 exp(-0.3 h)',
      (h: number) => 5 * Math.exp(-0.3 * h) + (h === 0 ? 5 : 0),
      596.7770069,
      10.3058522,
    ],
    ['10 exp(-0.15 h)', (h: number) => 10 * Math.exp(-0.15 * h), 572.3898735, 5.7584997],
    ['pure nugget', (h: number) => (h === 0 ? 10 : 0), 603.714286, 11.428571],
  ])('%s', (_, covariance, mean, variance) => {
    const { mean: means, variance: variances } = kriged(covariance);
    expect(means[0]).toBeCloseTo(mean, 5);
    expect(variances[0]).toBeCloseTo(variance, 5);
  });
});

describe('a Gaussian process with fixed parameters (values derived once with independent code)', () => {
  const x = [1, 3, 5, 6, 7, 8];
  const y = x.map((value) => value * Math.sin(value));
  const at = [2, 4, 5.5, 6.5, 7.5];
  const fitted = (covariance: (h: number) => number, noise: readonly number[]) =>
    conditionGaussian(
      {
        read: x.map((a) => x.map((b) => covariance(a - b))),
        across: at.map((a) => x.map((b) => covariance(a - b))),
        asked: at.map(() => covariance(0)),
      },
      y,
      noise,
      'known',
    );

  it('Matern 3/2, variance and length 1', () => {
    const fit = fitted(
      (h) => seamCorrelation(h, 1),
      x.map(() => 1e-5),
    );
    [0.675382, -1.867295, -3.767117, 1.398922, 6.829104].forEach((mean, i) => {
      expect(fit.mean[i]).toBeCloseTo(mean, 5);
    });
    [0.767562, 0.761961, 0.404534, 0.399297, 0.405113].forEach((sd, i) => {
      expect(Math.sqrt(fit.variance[i]!)).toBeCloseTo(sd, 5);
    });
    expect(fit.lnDensity).toBeCloseTo(-52.315511, 4);
    // and by the filter that fuses a seam
    const fused = fuseSeam(
      { common: 0, course: 1, range: 1 },
      x.map((place, i) => ({ at: place, value: y[i]!, sd: 1e-5 })),
      at,
    );
    at.forEach((_, i) => {
      expect(fused.mean[i]).toBeCloseTo(fit.mean[i]!, 5);
      expect(fused.sd[i]).toBeCloseTo(Math.sqrt(fit.variance[i]!), 5);
    });
  });

  it('squared exponential, three points and one, near the readings and far from them (Rasmussen and Williams 2006, 2.2; derived)', () => {
    const se = (h: number): number => Math.exp((-h * h) / 2);
    const of = (xs: readonly number[], ys: readonly number[], places: readonly number[], sd: number) =>
      conditionGaussian(
        {
          read: xs.map((a) => xs.map((b) => se(a - b))),
          across: places.map((a) => xs.map((b) => se(a - b))),
          asked: places.map(() => 1),
        },
        ys,
        xs.map(() => sd),
        'known',
      );
    const three = of([0, 1, 2], [0.5, 1.5, 1], [0.5, 1.5, 3, 10], 0.1);
    [1.09793885844723, 1.41682929985574, 0.206560484164061, 0].forEach((mean, i) => {
      expect(three.mean[i]).toBeCloseTo(mean, 10);
    });
    [0.0250204866613099, 0.0250204866613099, 0.530783296330674, 1].forEach((variance, i) => {
      expect(three.variance[i]).toBeCloseTo(variance, 10);
    });
    expect(three.lnDensity).toBeCloseTo(-3.49719319843344, 10);
    const one = of([0], [2], [1], 0.5);
    expect(one.mean[0]).toBeCloseTo(0.9704490555, 9);
    expect(one.variance[0]).toBeCloseTo(0.7056964471, 9);
  });

  it('Matern 5/2 with unequal noise', () => {
    const matern = (h: number): number => {
      const r = (Math.sqrt(5) * Math.abs(h)) / 1.43;
      return 25.2 * (1 + r + (r * r) / 3) * Math.exp(-r);
    };
    const fit = fitted(matern, [0.1, 0.2, 0.3, 0.1, 0.2, 0.3]);
    [1.111646, -2.521624, -3.915737, 1.433252, 6.94902].forEach((mean, i) => {
      expect(fit.mean[i]).toBeCloseTo(mean, 5);
    });
    expect(fit.lnDensity).toBeCloseTo(-15.936449, 5);
  });
});

describe('decision risks', () => {
  // gamma distribution, shape 4, scale 1/4; limit 2, u 0.25
  const gamma = {
    density: (y: number) => (4 ** 4 * y ** 3 * Math.exp(-4 * y)) / 6,
    from: 0,
    to: 14,
    most: 2,
    u: 0.25,
  };

  it('JCGM 106:2012, 9.5.4: out of tolerance, consumer and producer, before and after a guard band', () => {
    const simple = inspectionRisk({ ...gamma, acceptMost: 2 });
    expect(simple.outOfTolerance).toBeCloseTo(0.0423801, 6);
    expect(simple.falseAccept).toBeCloseTo(0.0080191, 6);
    expect(simple.falseReject).toBeCloseTo(0.0174446, 6);
    const guarded = inspectionRisk({ ...gamma, acceptMost: 1.6718288 });
    expect(guarded.falseAccept).toBeCloseTo(0.001, 6);
    expect(guarded.falseReject).toBeCloseTo(0.0754939, 6);
  });

  // a draft recommended practice (RP-19): u over the spread of the process 1/4, limits on both sides; computed again
  it.each([
    [0.6, 0.8416212336, 4.8386, 8.26008],
    [0.7, 1.0364333895, 3.92234, 5.72322],
    [0.8, 1.2815515655, 2.85583, 3.63227],
    [0.9, 1.644853627, 1.59995, 1.7988],
    [0.95, 1.959963985, 0.87101, 0.9239],
    [0.99, 2.575829304, 0.19992, 0.20244],
  ])('RP-19, in tolerance %d', (_, half, falseAccept, among) => {
    const risk = inspectionRisk({
      density: (y) => Math.exp((-y * y) / 2) / Math.sqrt(2 * Math.PI),
      from: -9,
      to: 9,
      least: -half,
      most: half,
      acceptLeast: -half,
      acceptMost: half,
      u: 0.25,
    });
    expect(100 * risk.falseAccept).toBeCloseTo(falseAccept, 3);
    expect(100 * risk.amongAccepted).toBeCloseTo(among, 3);
  });
});

it('N(10.5, 0.4) between 9 and 11: share out of tolerance', () => {
  const density = (y: number) => Math.exp(-(((y - 10.5) / 0.4) ** 2) / 2) / (0.4 * Math.sqrt(2 * Math.PI));
  const { outOfTolerance } = inspectionRisk({ density, from: 6, to: 15, least: 9, most: 11, u: 0.1 });
  expect(outOfTolerance).toBeCloseTo(0.10574, 5);
});

/** AIAG, Measurement Systems Analysis (4th edition), example of three appraisers, ten parts, three trials (readings from memory; they give the published results). */
const AIAG: Readonly<Record<string, readonly (readonly number[])[]>> = {
  A: [
    [0.29, -0.56, 1.34, 0.47, -0.8, 0.02, 0.59, -0.31, 2.26, -1.36],
    [0.41, -0.68, 1.17, 0.5, -0.92, -0.11, 0.75, -0.2, 1.99, -1.25],
    [0.64, -0.58, 1.27, 0.64, -0.84, -0.21, 0.66, -0.17, 2.01, -1.31],
  ],
  B: [
    [0.08, -0.47, 1.19, 0.01, -0.56, -0.2, 0.47, -0.63, 1.8, -1.68],
    [0.25, -1.22, 0.94, 1.03, -1.2, 0.22, 0.55, 0.08, 2.12, -1.62],
    [0.07, -0.68, 1.34, 0.2, -1.28, 0.06, 0.83, -0.34, 2.19, -1.5],
  ],
  C: [
    [0.04, -1.38, 0.88, 0.14, -1.46, -0.29, 0.02, -0.46, 1.77, -1.49],
    [-0.11, -1.13, 1.09, 0.2, -1.07, -0.67, 0.01, -0.56, 1.45, -1.77],
    [-0.15, -0.96, 0.67, 0.11, -1.45, -0.49, 0.21, -0.49, 1.87, -2.16],
  ],
};
const CROSSED: readonly StudyReading[] = Object.entries(AIAG).flatMap(([appraiser, trials]) =>
  trials.flatMap((trial) => trial.map((value, i) => ({ part: `part ${i + 1}`, appraiser, value }))),
);

/**
 * Thermal impedance of power modules, Houf and Berman, IEEE Transactions on Components, Hybrids, and Manufacturing Technology 11
 * (1988) 516-522, the data of the SAS example (readings from memory; they give its published variances). A part in each row.
 */
const IMPEDANCE: readonly (readonly number[])[] = [
  [37, 38, 37, 41, 41, 40, 41, 42, 41],
  [42, 41, 43, 42, 42, 42, 43, 42, 43],
  [30, 31, 31, 31, 31, 31, 29, 30, 28],
  [42, 43, 42, 43, 43, 43, 42, 42, 42],
  [28, 30, 29, 29, 30, 29, 31, 29, 29],
  [42, 42, 43, 45, 45, 45, 44, 46, 45],
  [25, 26, 27, 28, 28, 30, 29, 27, 27],
  [40, 40, 40, 43, 42, 42, 43, 43, 41],
  [25, 25, 25, 27, 29, 28, 26, 26, 26],
  [35, 34, 34, 35, 35, 34, 35, 34, 35],
];

describe('gauge studies', () => {
  it('AIAG example by analysis of variance and by average and range: opposite verdicts at five classes', () => {
    const pooled = gaugeStudy(CROSSED, 'anova_pooled')!;
    expect(pooled.repeatability).toBeCloseTo(0.199933, 5);
    expect(pooled.reproducibility).toBeCloseTo(0.226838, 5);
    expect(pooled.reading).toBeCloseTo(0.302372, 5);
    expect(pooled.parts).toBeCloseTo(1.042327, 5);
    expect(pooled.distinct).toBeCloseTo(4.8605, 3);
    const range = gaugeStudy(CROSSED, 'average_range')!;
    expect(range.repeatability).toBeCloseTo(0.201857, 4);
    expect(range.reproducibility).toBeCloseTo(0.229667, 4);
    expect(range.distinct).toBeCloseTo(5.0937, 2);
  });

  it('SAS VARCOMP, example of a gauge study: ten parts, three operators, three readings each', () => {
    const study = gaugeStudy(
      IMPEDANCE.flatMap((row, part) =>
        row.map((value, i) => ({
          ...{ part: `part ${part + 1}`, appraiser: `operator ${1 + Math.floor(i / 3)}`, value },
        })),
      ),
      'anova',
    )!;
    expect(study.variances!.error).toBeCloseTo(0.511111, 6);
    expect(study.variances!.interaction).toBeCloseTo(0.727984, 6);
    expect(study.variances!.appraiser).toBeCloseTo(0.564609, 6);
    expect(study.variances!.part).toBeCloseTo(48.292593, 6);
    expect(study.repeatability ** 2).toBeCloseTo(0.511111, 6);
    expect(study.reproducibility ** 2).toBeCloseTo(0.564609 + 0.727984, 5);
    expect(study.clamped).toBe(false);
  });

  it('NIST e-Handbook 2.4.4.1, check standard 140: two runs of six days, between which nothing shows', () => {
    const rows = numbers('./nist-check-standard-140.csv');
    const days = [1, 2].map((run) =>
      rows.filter((row) => row[0] === run).map((row) => ({ mean: row[7]!, sd: row[8]! })),
    );
    expect(days.map((run) => run.length)).toEqual([6, 6]);
    const study = nestedStudy([days], 6);
    expect(study.level1).toBeCloseTo(0.07871435172, 10);
    expect(study.level2).toBeCloseTo(0.02742157302, 10);
    // 0.000752 - 0.006196 / 6 is below 0
    expect([study.days, study.clamped]).toEqual([0, true]);
    const [first, second] = days.map((run) => nestedStudy([[run, run]], 6));
    expect([first!.level1, second!.level1]).toEqual([
      expect.closeTo(0.07743304635, 10),
      expect.closeTo(0.07997513155, 10),
    ]);
    expect([first!.level2, second!.level2]).toEqual([
      expect.closeTo(0.02727934506, 10),
      expect.closeTo(0.02756306708, 10),
    ]);
  });

  it('NIST StRD SiRstv: five instruments, five repeats, certified sums', () => {
    const study = gaugeStudy(
      numbers('./strd-sirstv.csv').map(([instrument, value]) => ({
        part: String(instrument),
        appraiser: 'one',
        value: value!,
      })),
      'anova',
    )!;
    expect(study.repeatability).toBeCloseTo(0.104076068334656, 9);
    expect(study.parts).toBeCloseTo(0.0197723918634039, 8);
  });

  const byProbe = (probe: number) => {
    const rows = numbers('./nist-mpc61.dat').filter((row) => row.length === 9 && row[2] === probe);
    const standards = [...new Set(rows.map((row) => row[1]))].map((wafer) =>
      [1, 2].map((run) =>
        rows
          .filter((row) => row[1] === wafer && row[0] === run)
          .map((row) => ({ mean: row[7]!, sd: row[8]! })),
      ),
    );
    return nestedStudy(standards, 6);
  };

  it('NIST e-Handbook 2.6.1, nested, probe 2062 is the odd one of five at every level', () => {
    const odd = byProbe(2062);
    for (const probe of [1, 281, 283, 2362]) {
      const other = byProbe(probe);
      expect(odd.level1).toBeGreaterThan(1.3 * other.level1);
      expect(odd.level2).toBeGreaterThan(1.2 * other.level2);
      expect(odd.level3).toBeGreaterThan(1.8 * other.level3);
    }
  });

  it('NIST e-Handbook 2.6.1, nested, probe 2362', () => {
    const study = byProbe(2362);
    expect(study.level1).toBeCloseTo(0.0729, 4);
    expect(study.level2).toBeCloseTo(0.0362, 4);
    expect(study.level3).toBeCloseTo(0.0196, 4);
  });
});

describe('uncertainty', () => {
  it('budget of a groove depth: repeats, resolution, bridge, certificate (GUM method, inputs of our own)', () => {
    const { lines, u } = readingBudget({
      repeatability: 0.15,
      reproducibility: 0,
      averaged: 3,
      resolution: 0.1,
      seating: 0.2,
      calibration: 0.05,
    });
    [0.08660254038, 0.02886751346, 0.1154700538, 0.05].forEach((each, i) => {
      expect(lines[i]!.u).toBeCloseTo(each, 9);
    });
    expect(u).toBeCloseTo(0.1554563176, 9);
  });

  it('JCGM 100:2008 H.1, end gauge: first and second order, degrees of freedom', () => {
    // ls, d, da, theta, as, dt; degrees of freedom from memory
    const out = propagate(
      ([ls, d, da, theta, as, dt]) => ls! + d! - ls! * (da! * theta! + as! * dt!),
      [
        { value: 50_000_623, u: 25, degrees: 18 },
        { value: 215, u: 9.7, degrees: 25.6 },
        { value: 0, u: 5.8e-7, degrees: 50 },
        { value: -0.1, u: 0.41 },
        { value: 1.15e-5, u: 1.2e-6 },
        { value: 0, u: 0.029, degrees: 2 },
      ],
    );
    expect(out.value).toBeCloseTo(50_000_838, 6);
    expect(out.u).toBeCloseTo(31.71060964, 3);
    expect(out.uSecond).toBeCloseTo(33.91114953, 2);
    expect(out.degrees).toBeCloseTo(16.6560627, 1);
    // the GUM takes the whole number below
    expect(studentQuantile(0.995, Math.floor(out.degrees)) * out.u).toBeCloseTo(92.61976587, 3);
  });

  it('NIST Technical Note 1297, table D.1: root sum of squares of nine components', () => {
    const out = propagate(
      (each) => each.reduce((sum, value) => sum + value, 0),
      [25, 5.8, 3.9, 6.7, 1.7, 5.8, 10.2, 2.9, 16.6].map((u) => ({ value: 0, u })),
    );
    expect(out.u).toBeCloseTo(33.81242375, 6);
  });

  it('guarded acceptance of a least depth: 8.1 is not shown to conform to 8.0, 8.3 is (JCGM 106; derived)', () => {
    const chanceBelow = (read: number): number =>
      inspectionRisk({
        density: (y) =>
          Math.exp(-(((y - read) / 0.1554563176) ** 2) / 2) / (0.1554563176 * Math.sqrt(2 * Math.PI)),
        from: read - 2,
        to: read + 2,
        least: 8,
        u: 0.1554563176,
      }).outOfTolerance;
    expect(1 - chanceBelow(8.1)).toBeCloseTo(0.7399747363, 6);
    expect(1 - chanceBelow(8.3)).toBeCloseTo(0.9731843471, 6);
  });

  it('JCGM 100:2008 H.2, correlated voltage, current and phase', () => {
    const rows = numbers('./gum-h2.csv');
    const columns = [0, 1, 2].map((k) => rows.map((row) => row[k]!));
    const means = columns.map((column) => column.reduce((sum, value) => sum + value, 0) / column.length);
    const covariance = (a: number, b: number): number =>
      rows.reduce((sum, row) => sum + (row[a]! - means[a]!) * (row[b]! - means[b]!), 0) /
      (rows.length * (rows.length - 1));
    const inputs = means.map((value, k) => ({ value, u: Math.sqrt(covariance(k, k)) }));
    const correlation = (a: number, b: number): number => covariance(a, b) / (inputs[a]!.u * inputs[b]!.u);
    const models = [
      ([v, i, phi]: readonly number[]) => (v! / i!) * Math.cos(phi!),
      ([v, i, phi]: readonly number[]) => (v! / i!) * Math.sin(phi!),
      ([v, i]: readonly number[]) => v! / i!,
    ];
    const found = models.map((model) => propagate(model, inputs, correlation));
    [127.7321699, 219.8465119, 254.2597019].forEach((value, k) => {
      expect(found[k]!.value).toBeCloseTo(value, 4);
    });
    [0.0710714074, 0.2955816774, 0.2363361301].forEach((u, k) => {
      expect(found[k]!.u).toBeCloseTo(u, 5);
    });
    [0.1945444545, 0.2009093059, 0.2040764254].forEach((u, k) => {
      expect(propagate(models[k]!, inputs).u).toBeCloseTo(u, 4);
    });
    // of two results, by the uncertainty of their sum
    const between = (a: number, b: number): number => {
      const sum = propagate((each) => models[a]!(each) + models[b]!(each), inputs, correlation).u;
      return (sum ** 2 - found[a]!.u ** 2 - found[b]!.u ** 2) / (2 * found[a]!.u * found[b]!.u);
    };
    expect(between(0, 1)).toBeCloseTo(-0.5884297844, 4);
    expect(between(0, 2)).toBeCloseTo(-0.4852592242, 4);
    expect(between(1, 2)).toBeCloseTo(0.9925116489, 4);
  });

  it('JCGM 101:2008 9.2.2 and 9.2.3: sums of four, normal and rectangular', () => {
    const normal = propagateByDraws(
      (draws) => draws.normal() + draws.normal() + draws.normal() + draws.normal(),
      200_000,
      1,
    );
    expect(normal.u).toBeCloseTo(2, 1);
    expect(normal.high).toBeCloseTo(3.92, 1);
    const root = Math.sqrt(3);
    const flat = propagateByDraws(
      (draws) => [1, 2, 3, 4].reduce((sum) => sum + root * (2 * draws.uniform() - 1), 0),
      400_000,
      2,
    );
    expect(flat.u).toBeCloseTo(2, 2);
    // exact: 2 sqrt 3 (2 - (3/5)^(1/4)) = 3.879, against 3.920 by the law of propagation
    expect(Math.abs((flat.high - flat.low) / 2 - 3.879406741)).toBeLessThan(0.015);
  });

  it('JCGM 101:2008 9.3: mass calibration, where the first order misses a quarter', () => {
    const mass = (rc: number, d: number, air: number, w: number, r: number): number =>
      (rc + d) * (1 + (air - 1.2) * (1 / w - 1 / r)) - 100_000;
    const drawn = propagateByDraws(
      (draws) =>
        mass(
          100_000 + 0.05 * draws.normal(),
          1.234 + 0.02 * draws.normal(),
          1.1 + 0.2 * draws.uniform(),
          7000 + 2000 * draws.uniform(),
          7950 + 100 * draws.uniform(),
        ),
      400_000,
      3,
    );
    expect(drawn.value).toBeCloseTo(1.234, 2);
    expect(Math.abs(drawn.u - 0.0755)).toBeLessThan(5e-4);
    // symmetric, so that the shortest interval is the one of equal tails
    expect(Math.abs(drawn.low - 1.084)).toBeLessThan(2e-3);
    expect(Math.abs(drawn.high - 1.383)).toBeLessThan(2e-3);
    const first = propagate(
      ([rc, d, air, w, r]) => mass(rc!, d!, air!, w!, r!),
      [
        { value: 100_000, u: 0.05 },
        { value: 1.234, u: 0.02 },
        { value: 1.2, u: 0.2 / Math.sqrt(12) },
        { value: 8000, u: 2000 / Math.sqrt(12) },
        { value: 8000, u: 100 / Math.sqrt(12) },
      ],
    );
    expect(first.u).toBeCloseTo(0.05385164807, 4);
  });

  it('JCGM 101:2008 9.4: comparison loss', () => {
    const inputs = [
      { value: 0.05, u: 0.005 },
      { value: 0, u: 0.005 },
    ];
    const model = ([x, y]: readonly number[]): number => x! * x! + y! * y!;
    expect(propagate(model, inputs).u).toBeCloseTo(0.0005, 7);
    expect(propagate(model, inputs).uSecond).toBeCloseTo(0.0005024937811, 8);
    const drawn = propagateByDraws(
      (draws) => model([0.05 + 0.005 * draws.normal(), 0.005 * draws.normal()]),
      200_000,
      4,
    );
    expect(drawn.value).toBeCloseTo(0.00255, 5);
    expect(drawn.u).toBeCloseTo(0.000502, 5);
  });
});
