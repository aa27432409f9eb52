import type { BlockHeat, BlockHeatInput } from '@furrow/engine';
import { quenchedSlab } from '../published/heat-exact.ts';

/** A setting of the finite-element program: arguments of its script, and how they read. */
interface FemSetting {
  readonly args: readonly number[];
  readonly what: string;
}

/** A setting of ours. */
interface OwnSetting {
  readonly input: BlockHeatInput;
  readonly what: string;
}

/** A problem with an exact field, and the settings of both programs from which the quickest is taken. */
export interface HeatProblem {
  readonly name: string;
  /** Exact rise above zero at a time of the input [K]. */
  readonly exact: (across: number, below: number, time: number) => number;
  /** Temperature that is zero in the exact field [K]. */
  readonly zero: number;
  readonly own: readonly OwnSetting[];
  readonly script: string;
  readonly fem: readonly FemSetting[];
}

const BODY = { k: 40, a: 1e-5 };
const CONSTANT = {
  start: 200,
  step: 4000,
  enthalpy: Float64Array.of(0, (4000 * BODY.k) / BODY.a),
  conductivity: Float64Array.of(BODY.k, BODY.k),
};
const ZERO = 293.15;
const SOLVERS = ['general factors', 'skyline Cholesky'] as const;

/** Greatest error over the greatest exact value, at the worst of the times. */
export function greatestError(problem: HeatProblem, input: BlockHeatInput, heat: BlockHeat): number {
  const { across, below, temperatures } = heat;
  return Math.max(
    ...input.times.map((time, at) => {
      let most = 0;
      let worst = 0;
      temperatures[at]!.forEach((hot, cell) => {
        if (cell >= across.length * below.length) return;
        const place = [across[cell % across.length]!, below[Math.floor(cell / across.length)]!] as const;
        const rise = problem.exact(...place, time);
        most = Math.max(most, rise);
        worst = Math.max(worst, Math.abs(hot - problem.zero - rise));
      });
      return worst / most;
    }),
  );
}

// the plate of cj.line in published/heat-fields.json; fewer images than there, as its start is in our time
const PLATE = { heat: 5e5, thickness: 0.012, far: 0.2 };

function plateRise(y: number, z: number, t: number): number {
  const spread = 4 * BODY.a * t;
  let images = 0;
  for (let n = -20; n <= 20; n += 1) images += Math.exp(-((z - 2 * n * PLATE.thickness) ** 2) / spread);
  return (PLATE.heat / (2 * Math.PI * BODY.k * t)) * Math.exp((-y * y) / spread) * images;
}

function plateInput(cells: number, tolerance: number): BlockHeatInput {
  const beta = Math.acosh(8);
  return {
    metal: CONSTANT,
    across: Array.from(
      { length: cells + 1 },
      (_, at) => (PLATE.far * Math.sinh((beta * at) / cells)) / Math.sinh(beta),
    ),
    below: Array.from({ length: cells / 4 + 1 }, (_, at) => (PLATE.thickness * at) / (cells / 4)),
    along: [0, 1],
    start: (y, z) => ZERO + plateRise(y, z, 1),
    loss: null,
    times: [4, 19, 59],
    tolerance,
  };
}

const lineSource: HeatProblem = {
  name: 'line source on a plate',
  exact: (y, z, time) => plateRise(y, z, time + 1),
  zero: ZERO,
  own: [24, 32, 36, 40, 48, 64, 80, 96, 112, 128, 144].flatMap((cells) =>
    [2, 1, 0.3, 0.1, 0.03].map((tolerance) => ({
      input: plateInput(cells, tolerance),
      what: `${cells} x ${cells / 4} cells`,
    })),
  ),
  script: 'line-source.edp',
  fem: [24, 32, 36, 40, 48, 64, 80, 96, 112, 128, 144].flatMap((cells) =>
    [6, 8, 12, 18, 24].flatMap((steps) =>
      SOLVERS.map((solver, skyline) => ({
        args: [cells, steps, skyline],
        what: `${cells} x ${cells / 4} cells, 6 legs of ${steps} steps, ${solver}`,
      })),
    ),
  ),
};

// the slab of cj.slab
const SLAB = { half: 0.01, hot: 1000 };
const SLAB_CELLS = [10, 12, 14, 16, 20, 24, 32, 40, 44, 48, 56, 64, 80];

function slabInput(cells: number, tolerance: number): BlockHeatInput {
  return {
    metal: CONSTANT,
    across: [0, 1],
    below: Array.from({ length: cells + 1 }, (_, at) => (2 * SLAB.half * at) / cells),
    along: [0, 1],
    start: () => ZERO + SLAB.hot,
    loss: { faces: ['top', 'bottom'], ambient: ZERO, film: 1e10, emissivity: 0 },
    times: [1, 2, 5],
    tolerance,
  };
}

const slab: HeatProblem = {
  name: 'slab of 20 mm with both faces stepped to 0',
  exact: (_, z, time) => SLAB.hot * quenchedSlab(BODY, SLAB.half, z - SLAB.half, time),
  zero: ZERO,
  own: SLAB_CELLS.flatMap((cells) =>
    [30, 10, 3, 1, 0.3, 0.1, 0.03].map((tolerance) => ({
      input: slabInput(cells, tolerance),
      what: `${cells} cells`,
    })),
  ),
  script: 'slab.edp',
  fem: SLAB_CELLS.flatMap((cells) =>
    [2, 4, 8, 12].flatMap((steps) =>
      [0, 1].flatMap((early) =>
        SOLVERS.flatMap((solver, skyline) =>
          ['', ', damped start'].map((start, damped) => ({
            args: [cells, steps, skyline, damped, early],
            what: `${cells} cells, ${early + 3} legs of ${steps} steps, ${solver}${start}`,
          })),
        ),
      ),
    ),
  ),
};

export const HEAT_PROBLEMS: readonly HeatProblem[] = [lineSource, slab];
