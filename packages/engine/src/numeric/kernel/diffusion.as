// AssemblyScript. Compiled to diffusion-wasm.ts by `npm run kernel`; diffusion-twin.ts does the same in TypeScript,
// operation by operation, so that both give the same bits. What the numbers mean and where they lie: diffusion-layout.ts.

// Places of the header's 32-bit numbers, in the order of HEADER in diffusion-layout.ts.
const CELLS: usize = 0;
const ROW: usize = 4;
const PLANE: usize = 8;
const LAST_SEGMENT: usize = 12;
const NOW: usize = 16;
const RATE: usize = 20;
const WORK_A: usize = 24;
const WORK_B: usize = 28;
const NEXT_RATE: usize = 32;
const POTENTIAL: usize = 36;
const ACROSS: usize = 40;
const BELOW: usize = 44;
const ALONG: usize = 48;
const INVERSE_VOLUME: usize = 52;
const PEAK: usize = 56;
const POTENTIAL_TABLE: usize = 60;
const LOSS_TABLE: usize = 64;
const EXPOSED_CELL: usize = 68;
const EXPOSED_AREA: usize = 72;
const EXPOSED_HALF: usize = 76;
const EXPOSED_COUNT: usize = 80;
const SOURCE_CELL: usize = 84;
const SOURCE_POWER: usize = 88;
const SOURCE_COUNT: usize = 92;
const STAGES: usize = 96;

// Places of the doubles, in the order of SCALARS in diffusion-layout.ts.
const TABLE_START: usize = 256;
const TABLE_PER_UNIT: usize = 264;
const TOLERANCE_ABSOLUTE: usize = 272;
const TOLERANCE_RELATIVE: usize = 280;
const LOSS_RATE: usize = 288;
const NEXT_LOSS_RATE: usize = 296;
const LOST: usize = 304;

const STAGE_BYTES: usize = 40;

/** Potential of every cell from its enthalpy: straight pieces of an even table. */
function lookUp(from: usize): void {
  const bytes = (<usize>load<i32>(CELLS)) << 3;
  const to = <usize>load<i32>(POTENTIAL);
  const table = <usize>load<i32>(POTENTIAL_TABLE);
  const start = f64x2.splat(load<f64>(TABLE_START));
  const perUnit = f64x2.splat(load<f64>(TABLE_PER_UNIT));
  const least = i32x4.splat(0);
  const most = i32x4.splat(load<i32>(LAST_SEGMENT));
  for (let at: usize = 0; at < bytes; at += 16) {
    const place = f64x2.mul(f64x2.sub(v128.load(from + at), start), perUnit);
    const segment = i32x4.min_s(i32x4.max_s(i32x4.trunc_sat_f64x2_s_zero(place), least), most);
    const one = v128.load(table + ((<usize>i32x4.extract_lane(segment, 0)) << 4));
    const two = v128.load(table + ((<usize>i32x4.extract_lane(segment, 1)) << 4));
    const base = v128.shuffle<f64>(one, two, 0, 2);
    const slope = v128.shuffle<f64>(one, two, 1, 3);
    v128.store(to + at, f64x2.add(base, f64x2.mul(slope, place)));
  }
}

/** What flows into two neighbouring cells at once, per volume. */
// @ts-ignore: decorator of AssemblyScript
@inline
function inflow(p: usize, gx: usize, gy: usize, row: usize, volume: usize): v128 {
  const here = v128.load(p);
  const x = f64x2.sub(
    f64x2.mul(v128.load(gx), f64x2.sub(v128.load(p + 8), here)),
    f64x2.mul(v128.load(gx - 8), f64x2.sub(here, v128.load(p - 8))),
  );
  const y = f64x2.sub(
    f64x2.mul(v128.load(gy), f64x2.sub(v128.load(p + row), here)),
    f64x2.mul(v128.load(gy - row), f64x2.sub(here, v128.load(p - row))),
  );
  return f64x2.mul(f64x2.add(x, y), v128.load(volume));
}

/** The same with neighbours along the seam. */
// @ts-ignore: decorator of AssemblyScript
@inline
function inflow3(p: usize, gx: usize, gy: usize, gz: usize, row: usize, plane: usize, volume: usize): v128 {
  const here = v128.load(p);
  const x = f64x2.sub(
    f64x2.mul(v128.load(gx), f64x2.sub(v128.load(p + 8), here)),
    f64x2.mul(v128.load(gx - 8), f64x2.sub(here, v128.load(p - 8))),
  );
  const y = f64x2.sub(
    f64x2.mul(v128.load(gy), f64x2.sub(v128.load(p + row), here)),
    f64x2.mul(v128.load(gy - row), f64x2.sub(here, v128.load(p - row))),
  );
  const z = f64x2.sub(
    f64x2.mul(v128.load(gz), f64x2.sub(v128.load(p + plane), here)),
    f64x2.mul(v128.load(gz - plane), f64x2.sub(here, v128.load(p - plane))),
  );
  return f64x2.mul(f64x2.add(f64x2.add(x, y), z), v128.load(volume));
}

/** Adds sources and takes losses, times a factor, in the cells that have them; returns the loss rate [W]. */
function scatter(from: usize, to: usize, factor: f64): f64 {
  const volume = <usize>load<i32>(INVERSE_VOLUME);
  const sources = load<i32>(SOURCE_COUNT);
  const sourceCell = <usize>load<i32>(SOURCE_CELL);
  const sourcePower = <usize>load<i32>(SOURCE_POWER);
  for (let k = 0; k < sources; k += 1) {
    const cell = (<usize>load<i32>(sourceCell + ((<usize>k) << 2))) << 3;
    const power = load<f64>(sourcePower + ((<usize>k) << 3));
    store<f64>(to + cell, load<f64>(to + cell) + factor * (power * load<f64>(volume + cell)));
  }
  const exposed = load<i32>(EXPOSED_COUNT);
  const exposedCell = <usize>load<i32>(EXPOSED_CELL);
  const exposedArea = <usize>load<i32>(EXPOSED_AREA);
  const exposedHalf = <usize>load<i32>(EXPOSED_HALF);
  const table = <usize>load<i32>(LOSS_TABLE);
  const start = load<f64>(TABLE_START);
  const perUnit = load<f64>(TABLE_PER_UNIT);
  const most = load<i32>(LAST_SEGMENT);
  let rate: f64 = 0;
  for (let k = 0; k < exposed; k += 1) {
    const cell = (<usize>load<i32>(exposedCell + ((<usize>k) << 2))) << 3;
    const place = (load<f64>(from + cell) - start) * perUnit;
    const segment = min(max(<i32>place, 0), most);
    const entry = table + ((<usize>segment) << 5);
    const flux = load<f64>(entry) + load<f64>(entry, 8) * place;
    const ratio = load<f64>(entry, 16) + load<f64>(entry, 24) * place;
    const lost = load<f64>(exposedArea + ((<usize>k) << 3)) * (flux / (1 + load<f64>(exposedHalf + ((<usize>k) << 3)) * ratio));
    rate += lost;
    store<f64>(to + cell, load<f64>(to + cell) - factor * (lost * load<f64>(volume + cell)));
  }
  return rate;
}

/** Rate of change of every cell; returns the loss rate [W]. */
function rateOf(from: usize, to: usize): f64 {
  lookUp(from);
  const bytes = (<usize>load<i32>(CELLS)) << 3;
  const row = (<usize>load<i32>(ROW)) << 3;
  const plane = (<usize>load<i32>(PLANE)) << 3;
  const p = <usize>load<i32>(POTENTIAL);
  const gx = <usize>load<i32>(ACROSS);
  const gy = <usize>load<i32>(BELOW);
  const gz = <usize>load<i32>(ALONG);
  const volume = <usize>load<i32>(INVERSE_VOLUME);
  if (plane == 0) {
    for (let at: usize = 0; at < bytes; at += 16) {
      v128.store(to + at, inflow(p + at, gx + at, gy + at, row, volume + at));
    }
  } else {
    for (let at: usize = 0; at < bytes; at += 16) {
      v128.store(to + at, inflow3(p + at, gx + at, gy + at, gz + at, row, plane, volume + at));
    }
  }
  return scatter(from, to, 1);
}

/** One stage of the step: to = c0 now + c1 last + c2 before + cf rate(last) + cg rate(now); returns the loss rate of `last`. */
function stage(last: usize, before: usize, to: usize, entry: usize): f64 {
  lookUp(last);
  const bytes = (<usize>load<i32>(CELLS)) << 3;
  const row = (<usize>load<i32>(ROW)) << 3;
  const plane = (<usize>load<i32>(PLANE)) << 3;
  const p = <usize>load<i32>(POTENTIAL);
  const gx = <usize>load<i32>(ACROSS);
  const gy = <usize>load<i32>(BELOW);
  const gz = <usize>load<i32>(ALONG);
  const volume = <usize>load<i32>(INVERSE_VOLUME);
  const now = <usize>load<i32>(NOW);
  const rate = <usize>load<i32>(RATE);
  const c0 = f64x2.splat(load<f64>(entry));
  const c1 = f64x2.splat(load<f64>(entry, 8));
  const c2 = f64x2.splat(load<f64>(entry, 16));
  const cf = f64x2.splat(load<f64>(entry, 24));
  const cg = f64x2.splat(load<f64>(entry, 32));
  if (plane == 0) {
    for (let at: usize = 0; at < bytes; at += 16) {
      const known = f64x2.add(f64x2.mul(c0, v128.load(now + at)), f64x2.mul(cg, v128.load(rate + at)));
      const former = f64x2.add(f64x2.mul(c1, v128.load(last + at)), f64x2.mul(c2, v128.load(before + at)));
      const flow = f64x2.mul(cf, inflow(p + at, gx + at, gy + at, row, volume + at));
      v128.store(to + at, f64x2.add(f64x2.add(known, former), flow));
    }
  } else {
    for (let at: usize = 0; at < bytes; at += 16) {
      const known = f64x2.add(f64x2.mul(c0, v128.load(now + at)), f64x2.mul(cg, v128.load(rate + at)));
      const former = f64x2.add(f64x2.mul(c1, v128.load(last + at)), f64x2.mul(c2, v128.load(before + at)));
      const flow = f64x2.mul(cf, inflow3(p + at, gx + at, gy + at, gz + at, row, plane, volume + at));
      v128.store(to + at, f64x2.add(f64x2.add(known, former), flow));
    }
  }
  return scatter(last, to, load<f64>(entry, 24));
}

/** The first stage needs no new rates: to = now + cg rate(now). */
function first(to: usize, entry: usize): void {
  const bytes = (<usize>load<i32>(CELLS)) << 3;
  const now = <usize>load<i32>(NOW);
  const rate = <usize>load<i32>(RATE);
  const cg = f64x2.splat(load<f64>(entry, 32));
  for (let at: usize = 0; at < bytes; at += 16) {
    v128.store(to + at, f64x2.add(v128.load(now + at), f64x2.mul(cg, v128.load(rate + at))));
  }
}

/** Rates of the state as it is now, after it, its volumes, sources or losses were changed from outside. */
export function prepare(): void {
  store<f64>(LOSS_RATE, rateOf(<usize>load<i32>(NOW), <usize>load<i32>(RATE)));
}

/** Tries one step with the coefficients laid down for it; returns its error over the tolerance, root mean square of all cells. */
export function attempt(duration: f64, stages: i32): f64 {
  const now = <usize>load<i32>(NOW);
  const a = <usize>load<i32>(WORK_A);
  const b = <usize>load<i32>(WORK_B);
  let entry = <usize>load<i32>(STAGES);
  const lossRate = load<f64>(LOSS_RATE);
  let lostBefore: f64 = 0;
  let lost = load<f64>(entry, 32) * lossRate;
  first(a, entry);
  let before = now;
  let last = a;
  for (let j = 1; j < stages; j += 1) {
    entry += STAGE_BYTES;
    const to = (j & 1) == 0 ? a : b;
    const rate = stage(last, before, to, entry);
    const next = load<f64>(entry, 8) * lost + load<f64>(entry, 16) * lostBefore + load<f64>(entry, 24) * rate + load<f64>(entry, 32) * lossRate;
    lostBefore = lost;
    lost = next;
    before = last;
    last = to;
  }
  store<f64>(LOST, lost);
  const nextRate = <usize>load<i32>(NEXT_RATE);
  store<f64>(NEXT_LOSS_RATE, rateOf(last, nextRate));
  return errorOf(now, last, <usize>load<i32>(RATE), nextRate, duration);
}

/** Error estimate of Sommeijer, Shampine and Verwer: 0.8 (y0 - y1) + 0.4 h (f0 + f1). */
function errorOf(now: usize, next: usize, rate: usize, nextRate: usize, duration: f64): f64 {
  const bytes = (<usize>load<i32>(CELLS)) << 3;
  const absolute = f64x2.splat(load<f64>(TOLERANCE_ABSOLUTE));
  const relative = f64x2.splat(load<f64>(TOLERANCE_RELATIVE));
  const half = f64x2.splat(0.4 * duration);
  const most = f64x2.splat(0.8);
  let sum = f64x2.splat(0);
  for (let at: usize = 0; at < bytes; at += 16) {
    const y0 = v128.load(now + at);
    const y1 = v128.load(next + at);
    const gap = f64x2.add(
      f64x2.mul(most, f64x2.sub(y0, y1)),
      f64x2.mul(half, f64x2.add(v128.load(rate + at), v128.load(nextRate + at))),
    );
    const allowed = f64x2.add(absolute, f64x2.mul(relative, f64x2.abs(y1)));
    const share = f64x2.div(gap, allowed);
    sum = f64x2.add(sum, f64x2.mul(share, share));
  }
  return sqrt((f64x2.extract_lane(sum, 0) + f64x2.extract_lane(sum, 1)) / <f64>load<i32>(CELLS));
}

/** Takes the step tried last, of so many stages, as done. */
export function accept(stages: i32): void {
  const next = <usize>load<i32>((stages & 1) == 1 ? WORK_A : WORK_B);
  const bytes = (<usize>load<i32>(CELLS)) << 3;
  const now = <usize>load<i32>(NOW);
  const rate = <usize>load<i32>(RATE);
  const nextRate = <usize>load<i32>(NEXT_RATE);
  const peak = <usize>load<i32>(PEAK);
  for (let at: usize = 0; at < bytes; at += 16) {
    const y = v128.load(next + at);
    v128.store(now + at, y);
    v128.store(rate + at, v128.load(nextRate + at));
    v128.store(peak + at, f64x2.max(v128.load(peak + at), y));
  }
  store<f64>(LOSS_RATE, load<f64>(NEXT_LOSS_RATE));
}
