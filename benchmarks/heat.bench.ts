/**
 * The heat solver: time to 1 % and 0.1 % error on problems with exact fields (a line source on a plate, a slab with
 * stepped faces) beside a general-purpose finite-element program, its inner loop beside the same scheme in C, memory
 * traffic beside the machine's bandwidth, cost against cells and length of seam. Ratios within one run; the rest of
 * the machine's work is in them.
 *
 * Not compared with finite elements, and not tried: a melting front, where the scheme chosen for their latent heat
 * would decide the result more than the program does, and a moving bell in three dimensions, where the way their flux
 * is assembled at each step would.
 */
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
import { greatestError, HEAT_PROBLEMS, type HeatProblem } from './heat-problem.ts';
import { output } from './run-program.ts';
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

const ROOM = 293.15;

interface Effort {
  readonly seconds: number;
  readonly error: number;
  readonly what: string;
}

/** Beyond this a setting is of no use to any comparison [-]. */
const ERROR_MOST = 0.01;

/** The whole call, with its grid, its start and the loading of its inner loop. */
function ourEfforts(problem: HeatProblem): Effort[] {
  return problem.own.flatMap(({ input, what }) => {
    const error = greatestError(problem, input, runOut(solveBlock(input)));
    if (!(error <= ERROR_MOST)) return [];
    const seconds = leastTime(() => runOut(solveBlock(input)));
    const setUp = leastTime(() => runOut(solveBlock({ ...input, times: [] })));
    return [{ seconds, error, what: `${what}, ${ms(setUp)} of it set-up` }];
  });
}

const FEM = 'FreeFem++-nw';

function hasFem(): boolean {
  if (output('which', [FEM]) !== undefined) return true;
  console.log('FreeFem++ is not installed: trying apt-get install freefem++');
  output('apt-get', ['install', '-y', '--no-install-recommends', 'freefem++']);
  return output('which', [FEM]) !== undefined;
}

/** Assembly, factors and march, without mesh and start; its script takes the least of a few rounds. */
function femEfforts({ script, fem }: HeatProblem): Effort[] {
  return fem.flatMap(({ args, what }) => {
    const run = (): { seconds: number; error: number } | undefined => {
      const found = /RESULT (\S+) (\S+)/u.exec(output(FEM, ['-v', '0', script, ...args.map(String)]) ?? '');
      return found ? { seconds: Number(found[1]), error: Number(found[2]) } : undefined;
    };
    const first = run();
    if (first === undefined) throw new Error(`FreeFem++ gives no result from ${script} ${args.join(' ')}`);
    if (!(first.error <= ERROR_MOST)) return [];
    const seconds = Math.min(first.seconds, run()?.seconds ?? Number.POSITIVE_INFINITY);
    return [{ seconds, error: first.error, what }];
  });
}

function quickest(efforts: readonly Effort[], error: number): Effort | undefined {
  return efforts
    .filter((effort) => effort.error <= error)
    .sort((one, other) => one.seconds - other.seconds)[0];
}

function ms(seconds: number): string {
  return `${(seconds * 1e3).toPrecision(3)} ms`;
}

function againstFem(problem: HeatProblem, installed: boolean): void {
  const ours = ourEfforts(problem);
  const theirs = installed ? femEfforts(problem) : [];
  for (const target of [0.01, 0.001]) {
    const mine = quickest(ours, target);
    const other = quickest(theirs, target);
    const label = `${problem.name} to ${target * 100} %: `;
    const own = mine ? `${ms(mine.seconds)} (${mine.what})` : 'not reached: FALLS SHORT';
    if (!installed) {
      console.log(label + own);
      continue;
    }
    const beside = other ? `${ms(other.seconds)} (${other.what})` : 'not reached';
    const ratio = mine && other ? other.seconds / mine.seconds : undefined;
    const verdict = ratio
      ? `: ${ratio.toPrecision(2)} times as long; wanted 10${ratio < 10 ? ': FALLS SHORT' : ''}`
      : '';
    console.log(`${label}${own}; FreeFem++, P1, Crank-Nicolson, one factoring a leg: ${beside}${verdict}`);
  }
}

function againstFemInAll(): void {
  const installed = hasFem();
  if (!installed) console.log('No FreeFem++: as root, apt-get install freefem++');
  for (const problem of HEAT_PROBLEMS) againstFem(problem, installed);
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
  againstFemInAll();
  againstC();
  wholeRuns();
  console.log(
    'What holds it back: against finite elements the number of sweeps, which grows with the fineness of the grid where ' +
      'a factoring is used again and again, and in small bodies set-up, which is in our time and not in theirs; against C two lanes where the machine has eight, and the table look-up, ' +
      'which WebAssembly does lane by lane; in large blocks memory. A window along the seam sweeps all its cells while ' +
      'the torch is in it, so a window of twice the length takes up to four times as long: keep windows short.',
  );
} finally {
  rmSync(WORK, { recursive: true });
}
