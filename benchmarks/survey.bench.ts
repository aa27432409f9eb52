/** Measuring a groove: sections, a cloud, fusion along the seam; against numpy and scipy on the same work, in the same run. */
import { execFileSync } from 'node:child_process';
import {
  conditionGaussian,
  fuseSeam,
  measureSection,
  type SectionScan,
  seamCorrelation,
  unrollCloud,
} from '@furrow/engine';
import { machineLine, timed, unrestNote } from './timing.ts';

/** A U with tilt and a fixed pattern for noise: no randomness, the same in every run. */
function scan(points: number, seed: number): SectionScan {
  const across = new Float64Array(points);
  const height = new Float64Array(points);
  for (let i = 0; i < points; i += 1) {
    const y = -0.02 + (0.04 * i) / (points - 1);
    const t = Math.abs(y);
    const groove = t > 0.0092 ? 0 : t < 0.0058 ? 0.006 + Math.sqrt(0.006 ** 2 - t * t) : (0.0092 - t) * 2.2;
    const noise = 3e-5 * Math.sin(12.9898 * i + 78.233 * seed) * Math.sin(4.1 * i * i + seed);
    across[i] = y;
    height[i] = 0.04 * y - Math.min(0.012, Math.max(0, groove)) + noise;
  }
  return { across, height };
}

const scans = Array.from({ length: 50 }, (_, k) => scan(1000, k));
const sections = timed(5, () => {
  for (let k = 0; k < 1000; k += 1) measureSection(scans[k % 50]!);
});

const POINTS = 5_000_000;
const cloud = { x: new Float64Array(POINTS), y: new Float64Array(POINTS), z: new Float64Array(POINTS) };
for (let k = 0; k < POINTS; k += 1) {
  const { across, height } = scans[k % 50]!;
  const i = Math.floor(k / 50) % 1000;
  cloud.x[k] = (6 * k) / POINTS;
  cloud.y[k] = across[i]!;
  cloud.z[k] = height[i]!;
}
const unrolled = timed(3, () => unrollCloud(cloud));

const readings = Array.from({ length: 10_000 }, (_, i) => ({
  at: 6e-4 * i,
  value: 0.05 * Math.sin(0.7 * i),
  sd: 0.03,
}));
const at = Array.from({ length: 241 }, (_, i) => 0.025 * i);
const spread = { common: 0.25, course: 0.045, range: 0.25 };
const fused = timed(9, () => fuseSeam(spread, readings, at));
const few = readings.filter((_, i) => i % 20 === 0);
const covariance = (a: number, b: number): number =>
  spread.common ** 2 + spread.course ** 2 * seamCorrelation(a - b, spread.range);
const exact = timed(5, () =>
  conditionGaussian(
    {
      read: few.map((one) => few.map((other) => covariance(one.at, other.at))),
      across: at.map((place) => few.map((one) => covariance(place, one.at))),
      asked: at.map((place) => covariance(place, place)),
    },
    few.map(({ value }) => value),
    few.map(({ sd }) => sd),
    'known',
  ),
);
const states = timed(9, () => fuseSeam(spread, few, at));

/** The same work in numpy and scipy: 40 sections by least squares alone, 500 readings by Cholesky. Prints two times [s]. */
const PYTHON = `
import time, numpy as np, scipy.optimize as so, scipy.linalg as sl
y = np.linspace(-0.02, 0.02, 1000); t = np.abs(y)
g = np.where(t > 0.0092, 0, np.where(t < 0.0058, 0.006 + np.sqrt(np.maximum(0.006**2 - t*t, 0)), (0.0092 - t)*2.2))
z = 0.04*y - np.clip(g, 0, 0.012) + 3e-5*np.sin(12.9898*np.arange(1000))
def section():
    s = t > 0.0105
    p = so.least_squares(lambda q: z[s] - q[0] - q[1]*y[s], [0, 0], loss='soft_l1', f_scale=3e-5).x
    d = p[0] + p[1]*y - z
    r = d > 0.6*d.max()
    so.least_squares(lambda q: np.hypot(y[r]-q[0], d[r]-q[1]) - q[2], [0, 0.006, 0.006], method='lm')
section()
a = time.perf_counter()
for _ in range(40): section()
b = time.perf_counter()
x = np.arange(500)*0.012; v = 0.05*np.sin(14*np.arange(500)); q = np.arange(241)*0.025
m = lambda h: (1 + np.sqrt(3)*np.abs(h)/0.25)*np.exp(-np.sqrt(3)*np.abs(h)/0.25)
def fuse():
    K = 0.25**2 + 0.045**2*m(x[:, None]-x[None, :]) + np.eye(500)*0.03**2
    c = sl.cho_factor(K, lower=True); k = 0.25**2 + 0.045**2*m(q[:, None]-x[None, :])
    return k @ sl.cho_solve(c, v), 0.25**2 + 0.045**2 - np.sum(k*sl.cho_solve(c, k.T).T, 1)
fuse()
c = time.perf_counter()
for _ in range(5): fuse()
e = time.perf_counter()
print((b-a)/40, (e-c)/5)
`;

console.log(machineLine());
console.log(
  `1000 sections of 1000 points ${sections.median.toFixed(2)} s (aim: below 1 s)${unrestNote(sections)}`,
);
console.log(
  `cloud of ${POINTS / 1e6} million points unrolled ${unrolled.median.toFixed(2)} s (aim: below 5 s)${unrestNote(unrolled)}`,
);
console.log(
  `10 000 readings fused ${(1000 * fused.median).toFixed(1)} ms (aim: 100 ms); 500 exactly ${(1000 * exact.median).toFixed(1)} ms${unrestNote(fused, exact)}`,
);
try {
  const [section, fuse] = execFileSync('python3', ['-c', PYTHON], { encoding: 'utf8' })
    .trim()
    .split(' ')
    .map(Number);
  console.log(
    `against scipy: a section takes x${(sections.median / 1000 / section!).toFixed(2)} of a plate line and a circle alone there; 500 readings by the filter in use x${(states.median / fuse!).toFixed(3)}, by the exact answer that it is held to x${(exact.median / fuse!).toFixed(2)}`,
  );
} catch {
  console.log('python3 with numpy and scipy is not there: no ratio against them.');
}
