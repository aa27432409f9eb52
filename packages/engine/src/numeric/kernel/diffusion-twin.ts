import { type DiffusionMemory, PLACE, SCALAR, STAGE_NUMBERS } from './diffusion-layout.ts';
import type { DiffusionRoutines } from './diffusion-routines.ts';

/** The routines of diffusion.as in TypeScript, operation by operation: the reference, and what runs without WebAssembly. */
export function diffusionTwin(memory: DiffusionMemory): DiffusionRoutines {
  const { header, scalars, layout } = memory;
  const { cells, pad, row, plane } = layout;
  // whole arrays with their pads, so that one index serves a cell and its neighbours
  const padded = (view: Float64Array): Float64Array =>
    new Float64Array(view.buffer, view.byteOffset - 8 * pad, cells + 2 * pad);
  const at = (name: 'workA' | 'workB' | 'potential'): Float64Array =>
    new Float64Array(memory.now.buffer, layout.at[name]! - 8 * pad, cells + 2 * pad);
  const now = padded(memory.now);
  const rate = padded(memory.rate);
  const nextRate = padded(memory.nextRate);
  const faceAcross = padded(memory.faceAcross);
  const faceBelow = padded(memory.faceBelow);
  const faceAlong = padded(memory.faceAlong);
  const inverseVolume = padded(memory.inverseVolume);
  const peak = padded(memory.peak);
  const workA = at('workA');
  const workB = at('workB');
  const potential = at('potential');
  const {
    potentialTable,
    lossTable,
    exposedCell,
    exposedArea,
    exposedHalf,
    sourceCell,
    sourcePower,
    stages,
  } = memory;
  const from = pad;
  const end = pad + cells;

  function segmentOf(place: number): number {
    const last = header[PLACE.lastSegment]!;
    return place > 0 ? (place < last ? Math.trunc(place) : last) : 0;
  }

  function lookUp(state: Float64Array): void {
    const start = scalars[SCALAR.tableStart]!;
    const perUnit = scalars[SCALAR.tablePerUnit]!;
    const last = header[PLACE.lastSegment]!;
    for (let i = from; i < end; i += 1) {
      const place = (state[i]! - start) * perUnit;
      const segment = 2 * (place > 0 ? (place < last ? place | 0 : last) : 0);
      potential[i] = potentialTable[segment]! + potentialTable[segment + 1]! * place;
    }
  }

  function inflow(i: number): number {
    const here = potential[i]!;
    const x = faceAcross[i]! * (potential[i + 1]! - here) - faceAcross[i - 1]! * (here - potential[i - 1]!);
    const y =
      faceBelow[i]! * (potential[i + row]! - here) - faceBelow[i - row]! * (here - potential[i - row]!);
    if (plane === 0) return (x + y) * inverseVolume[i]!;
    const z =
      faceAlong[i]! * (potential[i + plane]! - here) - faceAlong[i - plane]! * (here - potential[i - plane]!);
    return (x + y + z) * inverseVolume[i]!;
  }

  function scatter(state: Float64Array, to: Float64Array, factor: number): number {
    const sources = header[PLACE.sourceCount]!;
    for (let k = 0; k < sources; k += 1) {
      const i = from + sourceCell[k]!;
      to[i] = to[i]! + factor * (sourcePower[k]! * inverseVolume[i]!);
    }
    const start = scalars[SCALAR.tableStart]!;
    const perUnit = scalars[SCALAR.tablePerUnit]!;
    const exposed = header[PLACE.exposedCount]!;
    let total = 0;
    for (let k = 0; k < exposed; k += 1) {
      const i = from + exposedCell[k]!;
      const place = (state[i]! - start) * perUnit;
      const entry = 4 * segmentOf(place);
      const flux = lossTable[entry]! + lossTable[entry + 1]! * place;
      const ratio = lossTable[entry + 2]! + lossTable[entry + 3]! * place;
      const lost = exposedArea[k]! * (flux / (1 + exposedHalf[k]! * ratio));
      total += lost;
      to[i] = to[i]! - factor * (lost * inverseVolume[i]!);
    }
    return total;
  }

  function rateOf(state: Float64Array, to: Float64Array): number {
    lookUp(state);
    for (let i = from; i < end; i += 1) to[i] = inflow(i);
    return scatter(state, to, 1);
  }

  function first(to: Float64Array): void {
    const cg = stages[4]!;
    for (let i = from; i < end; i += 1) to[i] = now[i]! + cg * rate[i]!;
  }

  function stage(last: Float64Array, before: Float64Array, to: Float64Array, entry: number): number {
    lookUp(last);
    const c0 = stages[entry]!;
    const c1 = stages[entry + 1]!;
    const c2 = stages[entry + 2]!;
    const cf = stages[entry + 3]!;
    const cg = stages[entry + 4]!;
    for (let i = from; i < end; i += 1) {
      const known = c0 * now[i]! + cg * rate[i]!;
      const former = c1 * last[i]! + c2 * before[i]!;
      to[i] = known + former + cf * inflow(i);
    }
    return scatter(last, to, cf);
  }

  function errorOf(next: Float64Array, duration: number): number {
    const absolute = scalars[SCALAR.toleranceAbsolute]!;
    const relative = scalars[SCALAR.toleranceRelative]!;
    const half = 0.4 * duration;
    // two sums, as the two lanes of the other form have them
    let even = 0;
    let odd = 0;
    for (let i = from; i < end; i += 1) {
      const gap = 0.8 * (now[i]! - next[i]!) + half * (rate[i]! + nextRate[i]!);
      const share = gap / (absolute + relative * Math.abs(next[i]!));
      if ((i - from) % 2 === 0) even += share * share;
      else odd += share * share;
    }
    return Math.sqrt((even + odd) / cells);
  }

  return {
    prepare: () => {
      scalars[SCALAR.lossRate] = rateOf(now, rate);
    },
    attempt: (duration, count) => {
      const lossRate = scalars[SCALAR.lossRate]!;
      first(workA);
      let before = now;
      let last = workA;
      let lostBefore = 0;
      let lost = stages[4]! * lossRate;
      for (let j = 1; j < count; j += 1) {
        const entry = STAGE_NUMBERS * j;
        const to = j % 2 === 0 ? workA : workB;
        const loss = stage(last, before, to, entry);
        const next =
          stages[entry + 1]! * lost +
          stages[entry + 2]! * lostBefore +
          stages[entry + 3]! * loss +
          stages[entry + 4]! * lossRate;
        lostBefore = lost;
        lost = next;
        before = last;
        last = to;
      }
      scalars[SCALAR.lost] = lost;
      scalars[SCALAR.nextLossRate] = rateOf(last, nextRate);
      return errorOf(last, duration);
    },
    accept: (count) => {
      const next = count % 2 === 1 ? workA : workB;
      for (let i = from; i < end; i += 1) {
        now[i] = next[i]!;
        rate[i] = nextRate[i]!;
        peak[i] = Math.max(peak[i]!, next[i]!);
      }
      scalars[SCALAR.lossRate] = scalars[SCALAR.nextLossRate]!;
    },
  };
}
