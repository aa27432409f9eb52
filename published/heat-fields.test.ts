import { readFileSync } from 'node:fs';
import { type BlockHeat, type BlockHeatInput, solveBlock } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import {
  besideFilm,
  erf,
  erfc,
  lineOnPlate,
  movingBell,
  movingPoint,
  quenchedSlab,
  stepped,
  underFlux,
} from './heat-exact.ts';

/**
 * The heat solver against exact solutions (heat-fields.json: quantity, formula, source and provenance beside each).
 * Energy first: stored heat must equal what was put in, within 1e-6, before a comparison means anything.
 * Order: the error at cells of h, h/2 and h/4 must shrink as the scheme promises, second order where properties are
 * smooth; tolerances are what the finest grid reaches, with room of about a half.
 */
interface Entry {
  // biome-ignore lint/suspicious/noExplicitAny: every entry has inputs and outputs of its own shape
  readonly inputs: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above
  readonly output: any;
  readonly provenance: string;
}
const entries = JSON.parse(readFileSync(new URL('./heat-fields.json', import.meta.url), 'utf8')) as Record<
  string,
  Entry
>;

const ZERO_C = 273.15;
const BALANCE = 1e-6;
const BODY = { k: 40, a: 1e-5 };
const HEAT = BODY.k / BODY.a;
const STEEL_LIKE = {
  start: ZERO_C - 500,
  step: 12000,
  enthalpy: Float64Array.of(0, 12000 * HEAT),
  conductivity: Float64Array.of(BODY.k, BODY.k),
};
const MM = 1e-3;

function of(id: string): Entry {
  const entry = entries[id];
  if (entry === undefined) throw new Error(`no entry ${id}`);
  return entry;
}

function solve(input: BlockHeatInput): BlockHeat {
  const run = solveBlock(input);
  let turn = run.next();
  while (turn.done !== true) turn = run.next();
  expect(turn.value.balance.error).toBeLessThan(BALANCE);
  return turn.value;
}

/** Edges from 0 to a length, growing smoothly from the first: their widths at both ends differ by `growth`. */
function edges(length: number, cells: number, growth = 1): number[] {
  const beta = Math.acosh(Math.max(1, growth));
  return Array.from({ length: cells + 1 }, (_, at) =>
    growth === 1 ? (length * at) / cells : (length * Math.sinh((beta * at) / cells)) / Math.sinh(beta),
  );
}

/** Weights of the cubic through four middles, of cells mirrored at a closed face at 0 where asked. */
function cubic(middles: Float64Array, place: number, closed: boolean): { cell: number; weight: number }[] {
  const known = closed
    ? [
        ...[1, 0].map((cell) => ({ cell, at: -middles[cell]! })),
        ...Array.from(middles, (at, cell) => ({ cell, at })),
      ]
    : Array.from(middles, (at, cell) => ({ cell, at }));
  const above = known.findIndex(({ at }) => at > place);
  const first = Math.min(Math.max(0, (above < 0 ? known.length : above) - 2), known.length - 4);
  const four = known.length < 4 ? known : known.slice(first, first + 4);
  return four.map(({ cell, at }) => ({
    cell,
    weight: four.reduce(
      (product, other) => (other.at === at ? product : (product * (place - other.at)) / (at - other.at)),
      1,
    ),
  }));
}

/** Temperature at a place between the middles, at the time of a number. */
function at(
  heat: BlockHeat,
  time: number,
  place: { across?: number; below?: number; along?: number },
  closed: { below?: boolean } = {},
): number {
  const weights = (middles: Float64Array, where: number | undefined, mirror: boolean) =>
    where === undefined || middles.length === 1 ? [{ cell: 0, weight: 1 }] : cubic(middles, where, mirror);
  const columns = heat.across.length;
  const plane = columns * heat.below.length;
  let sum = 0;
  for (const z of weights(heat.along, place.along, false)) {
    for (const y of weights(heat.below, place.below, closed.below ?? false)) {
      for (const x of weights(heat.across, place.across, true)) {
        sum +=
          z.weight *
          y.weight *
          x.weight *
          heat.temperatures[time]![z.cell * plane + y.cell * columns + x.cell]!;
      }
    }
  }
  return sum;
}

/** Error at three grids, each of half the cells of the one before, shrinks with an order. */
function expectOrder(errors: readonly number[], least: number): void {
  for (let level = 1; level < errors.length; level += 1) {
    expect(
      Math.log2(errors[level - 1]! / errors[level]!),
      `orders of ${errors.map((each) => each.toExponential(2))}`,
    ).toBeGreaterThan(least);
  }
}

const LEVELS = [1, 2, 4] as const;

/** A rod below a surface with the constant body, its points and times as the entry lists them. */
function rodErrors(
  points: readonly (readonly [number, number])[],
  exact: (x: number, t: number) => number,
  set: (cells: number) => Pick<BlockHeatInput, 'start' | 'loss'> & Partial<BlockHeatInput>,
  closed: boolean,
): number[] {
  const times = [...new Set(points.map(([, t]) => t))].sort((one, other) => one - other);
  const length = 8 * Math.sqrt(BODY.a * times.at(-1)!);
  return LEVELS.map((level) => {
    const heat = solve({
      metal: STEEL_LIKE,
      across: [0, 1],
      below: edges(length, 60 * level, 20),
      along: [0, 1],
      times,
      tolerance: 4e-3 / level ** 3,
      ...set(60 * level),
    });
    return Math.max(
      ...points.map(([mm, t]) => {
        const x = mm * MM;
        return Math.abs(at(heat, times.indexOf(t), { below: x }, { below: closed }) - exact(x, t));
      }),
    );
  });
}

describe('half-space and slab', () => {
  it('whose surface is stepped to a temperature [cj.step, derived]', () => {
    const { inputs, output } = of('cj.step');
    const exact = (x: number, t: number): number => ZERO_C + 20 + 980 * stepped(BODY, x, t);
    inputs.x_mm_t_s.forEach(([mm, t]: [number, number], point: number) => {
      expect(exact(mm * MM, t) - ZERO_C).toBeCloseTo(output[point], 4);
    });
    const errors = rodErrors(
      inputs.x_mm_t_s,
      exact,
      () => ({
        start: () => ZERO_C + 20,
        loss: { faces: ['top'], ambient: ZERO_C + 1000, film: 1e10, emissivity: 0 },
      }),
      false,
    );
    expectOrder(errors, 1.7);
    expect(errors[2]).toBeLessThan(0.1);
  });

  it('under a constant flux [cj.flux, derived]', () => {
    const { inputs, output } = of('cj.flux');
    const exact = (x: number, t: number): number => ZERO_C + 20 + underFlux(BODY, inputs.F_W_m2, x, t);
    inputs.x_mm_t_s.forEach(([mm, t]: [number, number], point: number) => {
      expect(exact(mm * MM, t) - ZERO_C).toBeCloseTo(output[point], 3);
    });
    const errors = rodErrors(
      inputs.x_mm_t_s,
      exact,
      () => ({
        start: () => ZERO_C + 20,
        loss: null,
        flux: () => inputs.F_W_m2,
      }),
      false,
    );
    expectOrder(errors, 1.7);
    expect(errors[2]).toBeLessThan(0.1);
  });

  it('that cools through a film [cj.conv, derived]', () => {
    const { inputs, output } = of('cj.conv');
    const exact = (x: number, t: number): number =>
      ZERO_C + inputs.T0 + (inputs.Tf - inputs.T0) * besideFilm(BODY, inputs.h, x, t);
    inputs.x_mm_t_s.forEach(([mm, t]: [number, number], point: number) => {
      expect(exact(mm * MM, t) - ZERO_C).toBeCloseTo(output[point], 4);
    });
    const errors = rodErrors(
      inputs.x_mm_t_s,
      exact,
      () => ({
        start: () => ZERO_C + inputs.T0,
        loss: { faces: ['top'], ambient: ZERO_C + inputs.Tf, film: inputs.h, emissivity: 0 },
      }),
      false,
    );
    expectOrder(errors, 1.7);
    expect(errors[2]).toBeLessThan(0.02);
  });

  it('a slab with both faces quenched [cj.slab, derived]', () => {
    const { inputs, output } = of('cj.slab');
    const half = 10 * MM;
    const points = inputs.x_mm_from_mid_t_s as [number, number][];
    const exact = (x: number, t: number): number => ZERO_C + 1000 * quenchedSlab(BODY, half, x, t);
    points.forEach(([mm, t], point) => {
      expect(exact(mm * MM, t) - ZERO_C).toBeCloseTo(output[point], 3);
    });
    const errors = LEVELS.map((level) => {
      const heat = solve({
        metal: STEEL_LIKE,
        across: [0, 1],
        below: edges(2 * half, 20 * level),
        along: [0, 1],
        start: () => ZERO_C + 1000,
        loss: { faces: ['top', 'bottom'], ambient: ZERO_C, film: 1e10, emissivity: 0 },
        times: [1, 2, 5],
        tolerance: 4e-3 / level ** 3,
      });
      return Math.max(
        ...points.map(([mm, t]) =>
          Math.abs(at(heat, [1, 2, 5].indexOf(t), { below: half + mm * MM }) - exact(mm * MM, t)),
        ),
      );
    });
    expectOrder(errors, 1.8);
    expect(errors[2]).toBeLessThan(0.3);
  });
});

describe('line source on a plate', () => {
  const far = 0.2;

  it('spreads from its exact field at 1 s [cj.line, derived]', () => {
    const { inputs, output } = of('cj.line');
    const thickness = inputs.d_mm * MM;
    const exact = (y: number, z: number, t: number): number =>
      ZERO_C + 20 + lineOnPlate(BODY, inputs.E_J_m, thickness, y, z, t);
    const points = inputs.y_mm_z_mm_t_s as [number, number, number][];
    points.forEach(([y, z, t], point) => {
      expect(exact(y * MM, z * MM, t) - ZERO_C - 20).toBeCloseTo(output.exact[point], 2);
    });
    const later = points.filter(([, , t]) => t > 1);
    const times = [4, 19, 59];
    const errors = LEVELS.map((level) => {
      const heat = solve({
        metal: STEEL_LIKE,
        across: edges(far, 40 * level, 8),
        below: edges(thickness, 10 * level),
        along: [0, 1],
        start: (y, z) => exact(y, z, 1),
        loss: null,
        times,
        tolerance: 2e-2 / level ** 3,
      });
      return Math.max(
        ...later.map(([y, z, t]) =>
          Math.abs(
            at(heat, times.indexOf(t - 1), { across: y * MM, below: z * MM }, { below: true }) -
              exact(y * MM, z * MM, t),
          ),
        ),
      );
    });
    expectOrder(errors, 1.7);
    expect(errors[2]).toBeLessThan(0.3);
  });

  it('cools from 800 to 500 degC in the time of the exact field [cj.t85_exact, derived]', () => {
    const { inputs, output } = of('cj.t85_exact');
    const heatPerLength = inputs.E_J_mm * 1e3;
    for (const row of output as { d: number; exact: number }[]) {
      const thickness = row.d * MM;
      const exact = (y: number, z: number, t: number): number =>
        ZERO_C + 20 + lineOnPlate(BODY, heatPerLength, thickness, y, z, t);
      const first = 1;
      const times = Array.from({ length: 240 }, (_, step) => first * (1.025 ** (step + 1) - 1));
      const errors = [1, 2].map((level) => {
        const heat = solve({
          metal: STEEL_LIKE,
          across: edges(0.3, 36 * level, 10),
          below: edges(thickness, Math.max(8, Math.round(row.d / 2)) * level),
          along: [0, 1],
          start: (y, z) => exact(y, z, first),
          loss: null,
          times,
          tolerance: 0.1 / level ** 2,
        });
        const surface = times.map(
          (_, time) => at(heat, time, { across: 0, below: 0 }, { below: true }) - ZERO_C,
        );
        const falls = (level_: number): number => {
          const after = surface.findIndex((value) => value < level_);
          const [above, below] = [surface[after - 1]! - 20, surface[after]! - 20];
          // the fall is near a power of time
          const share = Math.log(above / (level_ - 20)) / Math.log(above / below);
          const [from, to] = [first + times[after - 1]!, first + times[after]!];
          return from * (to / from) ** share;
        };
        return Math.abs((falls(500) - falls(800)) / row.exact - 1);
      });
      expect(errors[1], `${row.d} mm: ${errors.join(', ')}`).toBeLessThan(2e-3);
      expect(errors[1]).toBeLessThan(Math.max(errors[0]!, 5e-4));
    }
  });
});

describe('moving sources', () => {
  const MOVING = { power: 5000, speed: 0.01 };
  const START = ZERO_C + 20;

  /** A source that runs along the top of half a plate from z = 0; cells even under its path. */
  function ride(
    set: {
      spread: number;
      cell: number;
      thickness: number;
      depth: number;
      wide: number;
      path: [number, number];
    },
    times: readonly number[],
  ): BlockHeat {
    const { spread, cell, thickness, wide, path } = set;
    const [from, to] = path;
    const even = Math.round((to - from) / cell);
    const flux = (x: number, z: number, t: number): number =>
      (MOVING.power / (2 * Math.PI * spread ** 2)) *
      Math.exp(-(x ** 2 + (z - MOVING.speed * t) ** 2) / (2 * spread ** 2));
    return solve({
      metal: STEEL_LIKE,
      across: edges(wide, Math.round(14 * (2e-3 / cell)), 8),
      below: edges(
        thickness,
        Math.round(set.depth * (2e-3 / cell)),
        Number.isFinite(thickness) && thickness < 0.02 ? 2 : 8,
      ),
      along: Array.from({ length: even + 1 }, (_, step) => from + ((to - from) * step) / even),
      start: () => START,
      loss: null,
      flux,
      fluxHeld: (0.25 * cell) / MOVING.speed,
      times,
      tolerance: 0.2 * (cell / 2e-3) ** 2,
    });
  }

  it('spread like a bell, from its start on [cj.gauss, derived]', () => {
    const { inputs, output } = of('cj.gauss');
    const spread = inputs.sigma_mm * MM;
    const bell = { ...MOVING, spread };
    const exact = (xi: number, y: number, z: number, t: number): number =>
      20 + movingBell(BODY, bell, xi * MM, y * MM, z * MM, t);
    inputs.steady_points_mm.forEach(([xi, y, z]: [number, number, number], point: number) => {
      expect(Math.abs(exact(xi, y, z, 60) / output.steady[point] - 1)).toBeLessThan(1e-3);
    });
    inputs.transient_origin_t_s.forEach((t: number, point: number) => {
      expect(Math.abs(exact(0, 0, 0, t) / output.transient_at_origin[point] - 1)).toBeLessThan(1e-6);
    });
    const times = [0.5, 1];
    const errors = LEVELS.map((level) => {
      const heat = ride(
        { spread, cell: (2.4 / level) * MM, thickness: 0.036, depth: 12, wide: 0.036, path: [-0.03, 0.036] },
        times,
      );
      return Math.max(
        ...times.flatMap((t, time) =>
          (inputs.steady_points_mm.slice(0, 5) as [number, number, number][]).map(([xi, y, z]) => {
            const ours = at(
              heat,
              time,
              { along: MOVING.speed * t + xi * MM, across: y * MM, below: z * MM },
              { below: false },
            );
            const there = exact(xi, y, z, t);
            return Math.abs(ours - ZERO_C - there) / output.transient_at_origin[2];
          }),
        ),
      );
    });
    expectOrder(errors, 1.6);
    expect(errors[2]).toBeLessThan(5e-3);
  });

  it.each([
    ['ros.3d', Number.POSITIVE_INFINITY, 'confirmed'],
    ['ros.medium', 12 * MM, 'derived'],
  ] as const)('a point, far behind it [%s]', (id, thickness, provenance) => {
    const { inputs, output, provenance: stated } = of(id);
    expect(stated).toBe(provenance);
    const points = inputs.points_mm as [number, number, number][];
    points.forEach(([xi, y, z], point) => {
      const rise = movingPoint(BODY, MOVING, thickness, xi * MM, y * MM, z * MM);
      expect(Math.abs((20 + rise) / output[point] - 1)).toBeLessThan(2e-4);
    });
    const time = 9;
    // a narrow bell stands for the point: from 20 mm on the two are within a hundredth
    const heat = ride(
      {
        spread: 0.8 * MM,
        cell: 1 * MM,
        thickness: Number.isFinite(thickness) ? thickness : 0.06,
        depth: Number.isFinite(thickness) ? 6 : 12,
        wide: 0.07,
        path: [-0.03, 0.12],
      },
      [time],
    );
    for (const [point, [xi, y, z]] of points.entries()) {
      const far = Math.hypot(xi, y, z);
      if (xi > -20 || far > 60) continue;
      const ours = at(
        heat,
        0,
        { along: MOVING.speed * time + xi * MM, across: y * MM, below: z * MM },
        { below: true },
      );
      expect(Math.abs((ours - ZERO_C) / output[point] - 1), `${xi} ${y} ${z}`).toBeLessThan(0.015);
    }
  });
});

describe('melting', () => {
  /** A metal that melts at one temperature, as nearly as an even table has it. */
  function melting(
    set: { solid: number; melt: number; latent: number; k: number; kMelt: number; at: number },
    range: [number, number],
    step: number,
  ) {
    const count = Math.round((range[1] - range[0]) / step) + 1;
    const temperature = Array.from({ length: count }, (_, entry) => range[0] + step * entry);
    const above = (t: number): number => Math.max(0, t - set.at - step / 2);
    const melted = (t: number): number => Math.min(1, Math.max(0, (t - set.at + step / 2) / step));
    return {
      start: range[0],
      step,
      enthalpy: Float64Array.from(
        temperature,
        (t) => set.solid * (Math.min(t, set.at) - range[0]) + set.latent * melted(t) + set.melt * above(t),
      ),
      conductivity: Float64Array.from(temperature, (t) => (t > set.at ? set.kMelt : set.k)),
    };
  }

  /** Root of Neumann's equation, with l exp(l^2) erf(l) rising and the solid's share falling. */
  function neumann(stl: number, sts: number, nu: number): number {
    let [low, high] = [1e-6, 3];
    for (let round = 0; round < 100; round += 1) {
      const l = (low + high) / 2;
      const solid = sts === 0 ? 0 : sts / (nu * Math.exp((nu * l) ** 2) * erfc(nu * l));
      if (stl / (Math.exp(l * l) * erf(l)) - solid > l * Math.sqrt(Math.PI)) low = l;
      else high = l;
    }
    return (low + high) / 2;
  }

  it('has the roots published [stefan.one memory, stefan.sym and stefan.two derived]', () => {
    const one = of('stefan.one');
    one.inputs.Ste.forEach((ste: string, at_: number) => {
      expect(neumann(Number(ste), 0, 1)).toBeCloseTo(one.output[at_], 7);
    });
    const { Stl, Sts, nu } = of('stefan.sym').inputs;
    expect(neumann(Stl, Sts, nu)).toBeCloseTo(of('stefan.sym').output, 7);
    const two = of('stefan.two').output;
    expect(neumann(two.Stl, two.Sts, two.nu)).toBeCloseTo(two.lam, 7);
  });

  /** Errors of the front [m], root mean square over times, at three grids. */
  function frontErrors(
    metal: ReturnType<typeof melting>,
    set: {
      melt: number;
      surface: number;
      start: number;
      speed: number;
      length: number;
      cells: number;
      times: number[];
    },
  ): number[] {
    return LEVELS.map((level) => {
      const heat = solve({
        metal,
        across: [0, 1],
        below: edges(set.length, set.cells * level, 8),
        along: [0, 1],
        start: () => set.start,
        loss: { faces: ['top'], ambient: set.surface, film: 1e10, emissivity: 0 },
        times: set.times,
        tolerance: 0.3 / level,
      });
      const squares = set.times.map((t, time) => {
        const temperatures = heat.temperatures[time]!;
        // straight on from the last two middles in the melt
        const cell = temperatures.findIndex((value) => value < set.melt + 1) - 1;
        const [x0, x1] = [heat.below[cell - 1]!, heat.below[cell]!];
        const [t0, t1] = [temperatures[cell - 1]!, temperatures[cell]!];
        const front = x1 + ((x1 - x0) * (t1 - set.melt)) / (t0 - t1);
        return (front - 2 * set.speed * Math.sqrt(t)) ** 2;
      });
      return Math.sqrt(squares.reduce((sum, each) => sum + each, 0) / squares.length);
    });
  }

  const TIMES = Array.from({ length: 24 }, (_, step) => 2 + 0.25 * step);

  it('of one phase goes as Stefan found [stefan.one, memory]', () => {
    const { inputs, output } = of('stefan.one');
    inputs.Ste.forEach((text: string, point: number) => {
      const melt = ZERO_C + 1000;
      const rise = 500;
      const metal = melting(
        { solid: HEAT, melt: HEAT, latent: (HEAT * rise) / Number(text), k: BODY.k, kMelt: BODY.k, at: melt },
        [melt - 50, melt + rise + 50],
        0.25,
      );
      const speed = output[point] * Math.sqrt(BODY.a);
      const errors = frontErrors(metal, {
        melt,
        surface: melt + rise,
        start: melt - 0.3,
        speed,
        length: 0.04,
        cells: 50,
        times: TIMES,
      });
      expect(errors[2]! / errors[0]!, errors.join(', ')).toBeLessThan(0.4);
      expect(errors[2]).toBeLessThan(0.05 * MM);
    });
  });

  it('of two phases goes as Neumann found [stefan.sym, derived]', () => {
    const melt = ZERO_C + 1000;
    const rise = 500;
    const metal = melting(
      { solid: HEAT, melt: HEAT, latent: HEAT * rise, k: BODY.k, kMelt: BODY.k, at: melt },
      [melt - rise - 50, melt + rise + 50],
      0.25,
    );
    const speed = of('stefan.sym').output * Math.sqrt(BODY.a);
    const errors = frontErrors(metal, {
      melt,
      surface: melt + rise,
      start: melt - rise,
      speed,
      length: 0.06,
      cells: 60,
      times: TIMES,
    });
    expect(errors[2]! / errors[0]!, errors.join(', ')).toBeLessThan(0.4);
    expect(errors[2]).toBeLessThan(0.05 * MM);
  });

  it('of a steel-like metal, front and temperatures [stefan.two, derived]', () => {
    const { inputs, output } = of('stefan.two');
    const metal = melting(
      {
        solid: inputs.rho * inputs.cs,
        melt: inputs.rho * inputs.cl,
        latent: inputs.rho * inputs.L,
        k: inputs.ks,
        kMelt: inputs.kl,
        at: ZERO_C + inputs.Tm,
      },
      [ZERO_C - 30, ZERO_C + inputs.Ts + 50],
      0.25,
    );
    const melted = inputs.kl / (inputs.rho * inputs.cl);
    const set = {
      melt: ZERO_C + inputs.Tm,
      surface: ZERO_C + inputs.Ts,
      start: ZERO_C + inputs.T0,
      length: 0.08,
      cells: 80,
    };
    const errors = frontErrors(metal, { ...set, speed: output.lam * Math.sqrt(melted), times: TIMES });
    expect(errors[2]! / errors[0]!, errors.join(', ')).toBeLessThan(0.4);
    expect(errors[2]).toBeLessThan(0.02 * MM);
    const heat = solve({
      metal,
      across: [0, 1],
      below: edges(set.length, 4 * set.cells, 8),
      along: [0, 1],
      start: () => set.start,
      loss: { faces: ['top'], ambient: set.surface, film: 1e10, emissivity: 0 },
      times: [4, 10],
      tolerance: 0.1,
    });
    for (const { x_mm, t_s, T } of output.T as { x_mm: number; t_s: number; T: number }[]) {
      const ours = at(heat, [4, 10].indexOf(t_s), { below: x_mm * MM }) - ZERO_C;
      expect(Math.abs(ours - T), `${x_mm} mm, ${t_s} s`).toBeLessThan(2);
    }
  });
});
