import { chebyshevStages, stagesFor } from './chebyshev-stages.ts';
import {
  type DiffusionMemory,
  type DiffusionSize,
  diffusionLayout,
  diffusionMemory,
  PLACE,
  SCALAR,
} from './diffusion-layout.ts';
import type { DiffusionRoutines } from './diffusion-routines.ts';
import { diffusionTwin } from './diffusion-twin.ts';
import { DIFFUSION_WASM } from './diffusion-wasm.ts';
import { compileModule, instanceOf } from './web-assembly.ts';

/** A diffusion problem in memory, with the inner loop that carries it through time. */
export interface DiffusionKernel {
  readonly memory: DiffusionMemory;
  /** Which of the two forms of the inner loop runs. */
  readonly form: 'webassembly' | 'typescript';
  /** States the table's range and the error allowed; the pieces themselves are written into the memory. */
  readonly setUp: (set: DiffusionSetUp) => void;
  /** How many places of the list of free faces are in use [-]. */
  readonly countExposed: (count: number) => void;
  /** How many places of the list of sources are in use [-]. */
  readonly countSources: (count: number) => void;
  /** State that the step tried last leads to; its rate is memory.nextRate [J/m3]. */
  readonly next: () => Float64Array;
  /** To be called when state, volumes, faces, sources or losses were changed. */
  readonly prepare: () => void;
  /** Tries a step; returns its error over the tolerance [-], heat lost meanwhile [J] and stages used [-]. */
  readonly attempt: (duration: number, stiffness: number) => DiffusionStep;
  /** Takes the step tried last as done. */
  readonly accept: () => void;
}

/** What a step tried came to. */
export interface DiffusionStep {
  /** Error over the error allowed, root mean square of all cells [-]. */
  readonly error: number;
  /** Heat lost at free faces meanwhile [J]. */
  readonly lost: number;
  /** Stages used [-]. */
  readonly stages: number;
}

/** Numbers of a problem beside its arrays. */
export interface DiffusionSetUp {
  /** Enthalpy at the table's first node [J/m3]. */
  readonly tableStart: number;
  /** Nodes per enthalpy [m3/J]. */
  readonly tablePerUnit: number;
  /** Error of a step allowed in any cell [J/m3]. */
  readonly tolerance: number;
}

const compiled = compileModule(DIFFUSION_WASM);

function inWebAssembly(size: DiffusionSize): [DiffusionMemory, DiffusionRoutines] | undefined {
  const layout = diffusionLayout(size);
  const run = instanceOf<DiffusionRoutines>(compiled(), layout.bytes);
  return run && [diffusionMemory(layout, size, run.buffer), run.exports];
}

function inTypeScript(size: DiffusionSize): [DiffusionMemory, DiffusionRoutines] {
  const layout = diffusionLayout(size);
  const memory = diffusionMemory(layout, size, new ArrayBuffer(layout.bytes));
  return [memory, diffusionTwin(memory)];
}

/**
 * Room for a diffusion problem, and the inner loop that steps it.
 *
 * Unknown is the enthalpy H of each cell; heat flows by the potential, the integral of k dT, read from a table over H:
 * dH/dt = [sum of face * (potential there - potential here) + sources - losses] / volume. One step is a
 * Runge-Kutta-Chebyshev step of second order with an error estimate; it keeps energy to rounding.
 *
 * @param size - cells and lists to make room for [record], at least 2 table nodes
 * @param form - which inner loop [text], 'fastest' (WebAssembly where it runs) or 'typescript'
 * @returns memory to fill and routines to run [record]
 * @source Sommeijer, Shampine and Verwer, RKC: an explicit solver for parabolic PDEs (memory)
 * @example
 * diffusionKernel({ across: 3, below: 1, along: 1, nodes: 2, exposedMost: 0, sourcesMost: 0 }, 'typescript').memory.layout.cells // => 4
 */
export function diffusionKernel(
  size: DiffusionSize,
  form: 'fastest' | 'typescript' = 'fastest',
): DiffusionKernel {
  const fast = form === 'fastest' ? inWebAssembly(size) : undefined;
  const [memory, routines] = fast ?? inTypeScript(size);
  const { scalars, header, layout } = memory;
  const work = (name: 'workA' | 'workB'): Float64Array =>
    new Float64Array(memory.now.buffer, layout.at[name], layout.cells);
  const [workA, workB] = [work('workA'), work('workB')];
  let stages = 0;
  return {
    memory,
    form: fast === undefined ? 'typescript' : 'webassembly',
    setUp: (set) => {
      scalars[SCALAR.tableStart] = set.tableStart;
      scalars[SCALAR.tablePerUnit] = set.tablePerUnit;
      scalars[SCALAR.toleranceAbsolute] = set.tolerance;
      scalars[SCALAR.toleranceRelative] = 0;
    },
    countExposed: (count) => {
      header[PLACE.exposedCount] = count;
    },
    countSources: (count) => {
      header[PLACE.sourceCount] = count;
    },
    next: () => (stages % 2 === 1 ? workA : workB),
    prepare: routines.prepare,
    attempt: (duration, stiffness) => {
      stages = stagesFor(duration * stiffness);
      chebyshevStages(stages, duration, memory.stages);
      const error = routines.attempt(duration, stages);
      return { error, stages, lost: scalars[SCALAR.lost]! };
    },
    accept: () => routines.accept(stages),
  };
}
