import { afterEach, describe, expect, it, vi } from 'vitest';
import { type DiffusionKernel, diffusionKernel } from './diffusion-kernel.ts';

/** Numbers between 0 and 1 that look random and are the same each time. */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A rough body: uneven volumes and faces, some closed, losses, sources and a bent table. */
function roughBody(
  form: 'fastest' | 'typescript',
  size: { across: number; below: number; along: number },
): DiffusionKernel {
  const draw = numbers(size.across * 7 + size.along);
  const { across, below, along } = size;
  const cells = across * below * along;
  const kernel = diffusionKernel({ ...size, nodes: 40, exposedMost: 6, sourcesMost: 3 }, form);
  const { memory } = kernel;
  kernel.setUp({ tableStart: -1, tablePerUnit: 4, tolerance: 1e-3 });
  const table = Array.from({ length: 41 }, (_, node) => node + 4 * Math.sin(node / 5));
  for (let node = 0; node < 39; node += 1) {
    const slope = table[node + 1]! - table[node]!;
    memory.potentialTable.set([table[node]! - slope * node, slope], 2 * node);
    memory.lossTable.set([0.1 * node, 0.1, 0.3, 0.01], 4 * node);
  }
  for (let cell = 0; cell < cells; cell += 1) {
    const [i, j, k] = [cell % across, Math.floor(cell / across) % below, Math.floor(cell / across / below)];
    memory.now[cell] = 9 * draw() - 0.5;
    memory.peak[cell] = memory.now[cell]!;
    memory.inverseVolume[cell] = 0.5 + draw();
    if (i + 1 < across) memory.faceAcross[cell] = draw() < 0.1 ? 0 : draw();
    if (j + 1 < below) memory.faceBelow[cell] = draw();
    if (k + 1 < along) memory.faceAlong[cell] = draw();
  }
  for (let face = 0; face < 6; face += 1) {
    memory.exposedCell[face] = Math.floor(draw() * cells);
    memory.exposedArea[face] = draw();
    memory.exposedHalf[face] = draw();
  }
  for (let source = 0; source < 3; source += 1) {
    memory.sourceCell[source] = Math.floor(draw() * cells);
    memory.sourcePower[source] = draw();
  }
  kernel.countExposed(6);
  kernel.countSources(3);
  kernel.prepare();
  return kernel;
}

const SIZES = [
  { across: 7, below: 5, along: 1 },
  { across: 6, below: 4, along: 1 },
  { across: 5, below: 3, along: 4 },
];

afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

describe('WebAssembly and its twin', () => {
  it.each(SIZES)('give the same bits for $across x $below x $along cells', (size) => {
    const fast = roughBody('fastest', size);
    const twin = roughBody('typescript', size);
    expect([fast.form, twin.form]).toEqual(['webassembly', 'typescript']);
    for (const duration of [1e-3, 0.02, 0.3, 2]) {
      expect(fast.attempt(duration, 60)).toEqual(twin.attempt(duration, 60));
      expect([...fast.next()]).toEqual([...twin.next()]);
      expect([...fast.memory.nextRate]).toEqual([...twin.memory.nextRate]);
      fast.accept();
      twin.accept();
      expect([...fast.memory.now]).toEqual([...twin.memory.now]);
      expect([...fast.memory.peak]).toEqual([...twin.memory.peak]);
    }
  });

  it.each([
    ['is missing', undefined],
    [
      'is refused by the page',
      {
        Module: class {
          constructor() {
            throw new Error('refused');
          }
        },
      },
    ],
  ])('where WebAssembly %s, the twin runs', async (_, host) => {
    vi.stubGlobal('WebAssembly', host);
    vi.resetModules();
    const fresh = await import('./diffusion-kernel.ts');
    const size = { across: 4, below: 1, along: 1, nodes: 2, exposedMost: 0, sourcesMost: 0 };
    expect(fresh.diffusionKernel(size).form).toBe('typescript');
  });
});

describe('a step', () => {
  it.each(SIZES)('keeps heat: stored = put in - lost, for $across x $below x $along cells', (size) => {
    const { memory, ...kernel } = roughBody('fastest', size);
    const cells = size.across * size.below * size.along;
    const stored = (state: Float64Array): number =>
      state.subarray(0, cells).reduce((sum, heat, cell) => sum + heat / memory.inverseVolume[cell]!, 0);
    const power = memory.sourcePower.reduce((sum, each) => sum + each, 0);
    const before = stored(memory.now);
    const { lost } = kernel.attempt(0.5, 60);
    expect(Math.abs(stored(kernel.next()) - before - (power * 0.5 - lost)) / Math.abs(before)).toBeLessThan(
      1e-13,
    );
  });

  it('is of second order', () => {
    // one mode of a closed rod decays as exp(-rate t) exactly, cell by cell
    const cells = 16;
    const rate = 2 - 2 * Math.cos(Math.PI / cells);
    const errorAfter = (steps: number): number => {
      const kernel = diffusionKernel(
        { across: cells, below: 1, along: 1, nodes: 2, exposedMost: 0, sourcesMost: 0 },
        'typescript',
      );
      const { memory } = kernel;
      kernel.setUp({ tableStart: 0, tablePerUnit: 1, tolerance: 1 });
      memory.potentialTable.set([0, 1]);
      const mode = (cell: number): number => Math.cos((Math.PI * (cell + 0.5)) / cells);
      for (let cell = 0; cell < cells; cell += 1) {
        memory.now[cell] = mode(cell);
        memory.inverseVolume[cell] = 1;
        if (cell + 1 < cells) memory.faceAcross[cell] = 1;
      }
      kernel.prepare();
      for (let step = 0; step < steps; step += 1) {
        // the same number of stages, however long the step
        kernel.attempt(40 / steps, (30 * steps) / 40);
        kernel.accept();
      }
      return Math.abs(memory.now[0]! - mode(0) * Math.exp(-rate * 40));
    };
    expect(Math.log2(errorAfter(8) / errorAfter(16))).toBeGreaterThan(1.8);
    expect(Math.log2(errorAfter(16) / errorAfter(32))).toBeGreaterThan(1.8);
  });

  it('shows an error that falls with the cube of its length', () => {
    const size = { across: 8, below: 1, along: 1, nodes: 2, exposedMost: 0, sourcesMost: 0 };
    const kernel = diffusionKernel(size, 'typescript');
    kernel.setUp({ tableStart: 0, tablePerUnit: 1, tolerance: 1 });
    kernel.memory.potentialTable.set([0, 1]);
    for (let cell = 0; cell < 8; cell += 1) {
      kernel.memory.now[cell] = cell ** 2;
      kernel.memory.inverseVolume[cell] = 1;
      if (cell < 7) kernel.memory.faceAcross[cell] = 1;
    }
    kernel.prepare();
    const [long, short] = [kernel.attempt(0.02, 4).error, kernel.attempt(0.01, 4).error];
    expect(Math.log2(long / short)).toBeGreaterThan(2.7);
  });
});
