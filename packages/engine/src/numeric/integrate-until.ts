import { bracketedRoot } from './bracketed-root.ts';

/** How an initial value problem is integrated. */
export interface IntegrateOptions {
  /** Relative error allowed in a step [-]. */
  readonly relative: number;
  /** Absolute error allowed in a step [-]. */
  readonly absolute: number;
  /** Integration stops where this falls through zero from above; left out: at the end only. */
  readonly event?: (time: number, state: readonly number[]) => number;
}

/** Where an integration went. */
export interface Trajectory {
  /** Times of the accepted steps, the start first [-]. */
  readonly times: readonly number[];
  /** State at each of these times [-]. */
  readonly states: readonly (readonly number[])[];
  /** Whether the event stopped it before the end. */
  readonly stopped: boolean;
}

const A = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
] as const;
const NODES = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1] as const;
/** Fifth-order weights less fourth-order ones. */
const ERROR = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40] as const;
const STEPS_MOST = 100_000;

type Slope = (time: number, state: readonly number[]) => readonly number[];

/**
 * Integrates an initial value problem with steps of its own choosing, up to an end or to an event.
 *
 * Dormand and Prince 5(4) with local extrapolation; an event is located by shortening the last step, so it is as
 * accurate as the steps themselves. Throws after 100 000 steps: such a problem is stiff and needs another method.
 *
 * @param slope - derivative of the state [record], finite where the solution goes
 * @param start - time and state at the start [record], finite
 * @param end - last time [-], above the start
 * @param options - error allowed and event [record], errors > 0
 * @returns the accepted steps [record]
 * @source J. R. Dormand, P. J. Prince, Journal of Computational and Applied Mathematics 6 (1980) 19-26 (memory)
 * @example
 * integrateUntil((t, [y]) => [-y], { time: 0, state: [1] }, 1, { relative: 1e-10, absolute: 1e-12 }).states.at(-1)[0] // => 0.367879441
 */
export function integrateUntil(
  slope: Slope,
  start: { readonly time: number; readonly state: readonly number[] },
  end: number,
  options: IntegrateOptions,
): Trajectory {
  const { event } = options;
  let { time, state } = start;
  const times = [time];
  const states = [state];
  let size = (end - time) / 100;
  for (let count = 0; time < end; count += 1) {
    if (count >= STEPS_MOST) throw new Error('integrateUntil: too many steps, the problem is stiff');
    size = Math.min(size, end - time);
    const next = stepOf(slope, time, state, size);
    const error = errorOf(state, next, options);
    if (error > 1) {
      size *= Math.max(0.2, 0.9 * error ** -0.2);
      continue;
    }
    const reached = size >= end - time ? end : time + size;
    if (event !== undefined && event(time, state) > 0 && event(reached, next.state) <= 0) {
      const [from, at] = [time, state];
      const after = (part: number): readonly number[] => stepOf(slope, from, at, part).state;
      const part = bracketedRoot((h) => event(from + h, h === 0 ? at : after(h)), 0, size, 1e-12 * size)!;
      return { times: [...times, from + part], states: [...states, after(part)], stopped: true };
    }
    time = reached;
    state = next.state;
    times.push(time);
    states.push(state);
    size *= Math.min(5, Math.max(0.2, 0.9 * Math.max(error, 1e-10) ** -0.2));
  }
  return { times, states, stopped: false };
}

function stepOf(
  slope: Slope,
  time: number,
  state: readonly number[],
  size: number,
): { readonly state: readonly number[]; readonly error: readonly number[] } {
  const slopes: (readonly number[])[] = [];
  let at = state;
  for (const [stage, weights] of A.entries()) {
    at = state.map((value, i) => weights.reduce((sum, w, k) => sum + size * w * slopes[k]![i]!, value));
    slopes.push(slope(time + NODES[stage]! * size, at));
  }
  const error = state.map((_, i) => ERROR.reduce((sum, w, k) => sum + size * w * slopes[k]![i]!, 0));
  return { state: at, error };
}

function errorOf(
  before: readonly number[],
  next: { readonly state: readonly number[]; readonly error: readonly number[] },
  { relative, absolute }: IntegrateOptions,
): number {
  const terms = next.error.map((error, i) => {
    const scale = absolute + relative * Math.max(Math.abs(before[i]!), Math.abs(next.state[i]!));
    return Math.abs(error) / scale;
  });
  return Math.max(...terms);
}
