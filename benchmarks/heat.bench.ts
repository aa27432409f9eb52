/**
 * The heat solver: time to 1 % and 0.1 % error on a line source on a plate beside a general-purpose finite-element
 * program, its inner loop beside the same scheme in C, memory traffic beside the machine's bandwidth, cost against
 * cells and length of seam. Ratios within one run; the rest of the machine's work is in them.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type BlockHeatInput,
  diffusionKernel,
  metalOf,
  type SeamEndInput,
  solveBlock,
  solveSeamEnd,
  solveSection,
  thermalOf,
} from '@furrow/engine';
import { machineLine } from './timing.ts';

const HERE = import.meta.dirname;
const WORK = mkdtempSync(join(tmpdir(), 'furrow-heat-'));
const CALLS = 7;

/** Least time of a few calls: other work on the machine only ever adds [s]. */
function leastTime(run: () => unknown, calls = CALLS): number {
  run();
  return Math.min(
    ...Array.from({ length: calls }, () => {
      const start = process.hrtime.bigint();
      run();
      return Number(process.hrtime.bigint() - start) / 1e9;
    }),
  );
}

function runOut<T>(run: Generator<number, T>): T {
  for (;;) {
    const turn = run.next();
    if (turn.done === true) return turn.value;
  }
}

function output(program: string, args: readonly string[]): string | undefined {
  const { status, stdout, error } = spawnSync(program, args, { encoding: 'utf8', timeout: 120_000 });
  return error === undefined && status === 0 ? stdout : undefined;
}

// the plate of cj.line in published/heat-fields.json
const PLATE = { k: 40, a: 1e-5, heat: 5e5, thickness: 0.012, far: 0.2 };
const TIMES = [4, 19, 59];
const ROOM = 293.15;

function exactRise(y: number, z: number, t: number): number {
  const { k, a, heat, thickness } = PLATE;
  let images = 0;
  for (let n = -20; n <= 20; n += 1) images += Math.exp(-((z - 2 * n * thickness) ** 2) / (4 * a * t));
  return (heat / (2 * Math.PI * k * t)) * Math.exp((-y * y) / (4 * a * t)) * images;
}

const CONSTANT = {
  start: 200,
  step: 4000,
  enthalpy: Float64Array.of(0, (4000 * PLATE.k) / PLATE.a),
  conductivity: Float64Array.of(PLATE.k, PLATE.k),
};

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
    start: (y, z) => ROOM + exactRise(y, z, 1),
    loss: null,
    times: TIMES,
    tolerance,
  };
}

/** Greatest error over the greatest rise, at the three times. */
function plateError(input: BlockHeatInput): number {
  const { across, below, temperatures } = runOut(solveBlock(input));
  return Math.max(
    ...TIMES.map((time, at) => {
      let most = 0;
      let worst = 0;
      temperatures[at]!.forEach((hot, cell) => {
        if (cell >= across.length * below.length) return;
        const rise = exactRise(
          across[cell % across.length]!,
          below[Math.floor(cell / across.length)]!,
          time + 1,
        );
        most = Math.max(most, rise);
        worst = Math.max(worst, Math.abs(hot - ROOM - rise));
      });
      return worst / most;
    }),
  );
}

interface Effort {
  readonly seconds: number;
  readonly error: number;
  readonly what: string;
}

function ourEfforts(): Effort[] {
  return [24, 32, 36, 40, 48, 64, 80, 96, 112, 128, 144].flatMap((cells) =>
    [2, 1, 0.3, 0.1, 0.03].map((tolerance) => {
      const input = plateInput(cells, tolerance);
      const error = plateError(input);
      const worth = error < 0.01;
      const seconds = worth ? leastTime(() => runOut(solveBlock(input))) : Number.POSITIVE_INFINITY;
      return { seconds, error, what: `${cells} x ${cells / 4} cells` };
    }),
  );
}

const FEM = 'FreeFem++-nw';

function hasFem(): boolean {
  if (output('which', [FEM]) !== undefined) return true;
  console.log('FreeFem++ is not installed: trying apt-get install freefem++');
  output('apt-get', ['install', '-y', '--no-install-recommends', 'freefem++']);
  return output('which', [FEM]) !== undefined;
}

function femEfforts(): Effort[] {
  const script = join(HERE, 'line-source.edp');
  return [24, 32, 36, 40, 64, 96, 112, 128, 144].flatMap((cells) =>
    [4, 8, 16, 24].flatMap((steps) => {
      const args = ['-v', '0', script, String(cells), String(cells / 4), String(steps)];
      const runs = [0, 1, 2].flatMap(() => {
        const found = /RESULT (\S+) (\S+)/u.exec(output(FEM, args) ?? '');
        return found ? [{ seconds: Number(found[1]), error: Number(found[2]) }] : [];
      });
      if (runs.length === 0) return [];
      const seconds = Math.min(...runs.map((run) => run.seconds));
      return [
        { seconds, error: runs[0]!.error, what: `${cells} x ${cells / 4} cells, ${steps} steps a leg` },
      ];
    }),
  );
}

function quickest(efforts: readonly Effort[], error: number): Effort | undefined {
  return efforts
    .filter((effort) => effort.error <= error)
    .sort((one, other) => one.seconds - other.seconds)[0];
}

function ms(seconds: number): string {
  return `${(seconds * 1e3).toPrecision(3)} ms`;
}

function againstFem(): void {
  const ours = ourEfforts();
  const theirs = hasFem() ? femEfforts() : undefined;
  if (theirs === undefined) console.log('No FreeFem++: as root, apt-get install freefem++');
  for (const target of [0.01, 0.001]) {
    const mine = quickest(ours, target);
    const other = theirs && quickest(theirs, target);
    const label = `line source on a plate to ${target * 100} %: `;
    if (mine === undefined) {
      console.log(`${label}not reached`);
      continue;
    }
    const own = `${ms(mine.seconds)} (${mine.what})`;
    if (other === undefined) console.log(label + own);
    else {
      const ratio = other.seconds / mine.seconds;
      console.log(
        `${label}${own}; FreeFem++, P1, Crank-Nicolson, one factoring a leg: ${ms(other.seconds)} (${other.what}): ` +
          `${ratio.toFixed(1)} times as long; wanted 10${ratio < 10 ? ': FALLS SHORT' : ''}`,
      );
    }
  }
}

/** A block in the kernel's memory with steel's bent table, ready for steps. */
function steelBlock(across: number, below: number, along: number) {
  const metal = thermalOf('carbon_steel');
  const input: BlockHeatInput = {
    metal,
    across: Array.from({ length: across + 1 }, (_, at) => at * 1e-3),
    below: Array.from({ length: below + 1 }, (_, at) => at * 1e-3),
    along: along === 1 ? [0, 1] : Array.from({ length: along + 1 }, (_, at) => at * 1e-3),
    start: (x, y, z) => 400 + 900 * Math.sin(x * 700 + y * 900 + (along === 1 ? 0 : z * 500)) ** 2,
    loss: null,
    times: [],
    tolerance: 1,
  };
  const kernel = diffusionKernel({ across, below, along, nodes: 2048, exposedMost: 0, sourcesMost: 0 });
  const { memory } = kernel;
  const least = metal.enthalpy[0]!;
  const most = metal.enthalpy.at(-1)!;
  const perUnit = 2047 / (most - least);
  kernel.setUp({ tableStart: least, tablePerUnit: perUnit, tolerance: 1 });
  for (let node = 0; node < 2047; node += 1) {
    // a potential that bends as steel's does; its values do not matter to the speed
    const at = (place: number): number => 5 * place + 400 * Math.sin(place / 300);
    const slope = at(node + 1) - at(node);
    memory.potentialTable.set([at(node) - slope * node, slope], 2 * node);
  }
  for (let cell = 0; cell < across * below * along; cell += 1) {
    const i = cell % across;
    const j = Math.floor(cell / across) % below;
    const k = Math.floor(cell / across / below);
    memory.now[cell] = least + (most - least) * (0.1 + 0.4 * Math.sin(input.start(i, j, k)) ** 2);
    memory.inverseVolume[cell] = 1e9;
    if (i + 1 < across) memory.faceAcross[cell] = 1e-3;
    if (j + 1 < below) memory.faceBelow[cell] = 1e-3;
    if (k + 1 < along) memory.faceAlong[cell] = 1e-3;
  }
  kernel.prepare();
  return kernel;
}

const STAGES = 40;
/** Step times stiffness for which the kernel takes so many stages [-]. */
const STEP_STIFFNESS = ((STAGES - 1) ** 2 - 1) / 1.54 + 0.1;
/** Numbers read and written for each cell in one sweep: look-up 2, stage 9 in a section, 10 with three directions. */
const NUMBERS = { section: 11, block: 12 } as const;

function againstC(): void {
  const program = join(WORK, 'diffusion');
  const source = join(HERE, 'diffusion.c');
  const compiled = output('gcc', ['-O3', '-march=native', '-o', program, source, '-lm']);
  if (compiled === undefined) {
    console.log('No gcc: the comparison with C is left out');
    return;
  }
  const triad = Number(output(program, ['triad', '256']));
  console.log(`triad: ${(triad / 1e9).toFixed(1)} GB/s, arrays of 256 MB`);
  for (const [across, below, along] of [
    [80, 50, 1],
    [160, 100, 1],
    [44, 18, 64],
    [80, 40, 400],
  ] as const) {
    const kernel = steelBlock(across, below, along);
    const cells = across * below * along;
    const { layout } = kernel.memory;
    const step = 1e-9;
    kernel.attempt(step, STEP_STIFFNESS / step);
    const dump = join(WORK, 'memory');
    writeFileSync(dump, new Uint8Array(kernel.memory.now.buffer, 0, layout.bytes));
    const sum = kernel.next().reduce((total, heat) => total + heat, 0);
    let stages = STAGES;
    const rounds = cells > 500_000 ? 5 : 40;
    const own = leastTime(() => {
      stages = kernel.attempt(step, STEP_STIFFNESS / step).stages;
    }, rounds);
    const [seconds, theirSum] = (output(program, [dump, String(stages), String(rounds)]) ?? '')
      .split(' ')
      .map(Number);
    if (seconds === undefined || theirSum === undefined || !(Math.abs(theirSum / sum - 1) < 1e-9)) {
      console.log(`C does not give the same result: ${theirSum} for ${sum}`);
      continue;
    }
    // a step ends with rates, which cost about one sweep more
    const sweep = own / (stages + 1);
    const share = seconds / sweep;
    const numbers = along === 1 ? NUMBERS.section : NUMBERS.block;
    const traffic = (8 * numbers * cells) / sweep;
    console.log(
      `${across} x ${below} x ${along} cells, ${kernel.form}: ${((sweep / cells) * 1e9).toFixed(2)} ns a cell and sweep, ` +
        `C ${((seconds / cells) * 1e9).toFixed(2)} ns: ${(100 * share).toFixed(0)} % of its speed, wanted 50 %` +
        `${share < 0.5 ? ': FALLS SHORT' : ''}; ${(traffic / 1e9).toFixed(1)} GB/s of numbers, ` +
        `${((100 * traffic) / triad).toFixed(0)} % of the triad`,
    );
  }
}

function roundFloor(radius: number, depth: number) {
  return Array.from({ length: 33 }, (_, at) => {
    const offset = (radius * (at - 16)) / 16;
    return { offset, depth: Math.max(0, depth - radius + Math.sqrt(radius ** 2 - offset ** 2)) };
  });
}

function wholeRuns(): void {
  const metal = thermalOf(metalOf('carbon_steel').family);
  const passes = [6e-3, 12e-3].map((depth, layer) => ({
    at: 300 * layer,
    duration: 1.2,
    floor: roundFloor(8e-3, depth),
    keptPerLength: 8e5,
  }));
  const plate = {
    metal,
    thickness: 0.032,
    ambient: ROOM,
    start: ROOM,
    losses: 'film_and_radiation' as const,
  };
  for (const quality of ['quick', 'refined'] as const) {
    const frameTimes = Array.from({ length: 72 }, (_, at) => at * 20);
    const run = () => runOut(solveSection({ ...plate, passes, until: 1500, frameTimes, quality }));
    const { cells, sweeps, gridError } = run();
    console.log(
      `section, two passes and 20 min of cooling, ${quality}: ${ms(leastTime(run, 3))}, ${cells} cells, ${sweeps} sweeps` +
        `${gridError === null ? '' : `, peaks within ${(100 * gridError).toFixed(1)} % by two grids`}`,
    );
  }
  const window = { seamGoesOn: true, plate: 0 };
  for (const length of [0.1, 0.2, 0.4]) {
    const input: SeamEndInput = {
      ...plate,
      halfWidth: 0.1,
      length,
      before: window,
      after: { seamGoesOn: false, plate: 0.06 },
      passes: passes.slice(0, 1).map((pass) => ({ ...pass, at: 0, travel: 0.01 })),
      past: 1000,
      until: 60,
      quality: 'quick',
    };
    const run = () => runOut(solveSeamEnd(input));
    const { cells, sweeps } = run();
    const took = leastTime(run, 2);
    console.log(
      `end of a seam, window of ${length * 1e3} mm: ${ms(took)}, ${cells} cells, ${sweeps} sweeps, ` +
        `${((took / cells / sweeps) * 1e9).toFixed(1)} ns a cell and sweep, ${((took / length) * 1e3).toFixed(0)} ms a metre`,
    );
  }
}

console.log(machineLine());
try {
  againstFem();
  againstC();
  wholeRuns();
  console.log(
    'What holds it back: against finite elements the number of sweeps, which grows with the fineness of the grid where ' +
      'a factoring is used again and again; against C two lanes where the machine has eight, and the table look-up, ' +
      'which WebAssembly does lane by lane; in large blocks memory. A window along the seam sweeps all its cells while ' +
      'the torch is in it, so a window of twice the length takes up to four times as long: keep windows short.',
  );
} finally {
  rmSync(WORK, { recursive: true });
}
