import type { DutyInterval } from '../duty/index.ts';
import { HOTTEST } from './copper.ts';
import type { HeatModel } from './lead-heat.ts';

/** Temperature of a conductor at a moment. */
export interface TemperaturePoint {
  /** Since the start of the duty [s]. */
  readonly time_s: number;
  /** Conductor temperature [K]. */
  readonly temperature_K: number;
}

/** How a conductor's temperature went through a duty. */
export interface TemperatureCourse {
  readonly history: readonly TemperaturePoint[];
  /** Highest temperature [K]. */
  readonly peak_K: number;
  /** When it was reached [s]. */
  readonly peak_s: number;
  /** The duty was stopped here because 200 degC was passed. */
  readonly beyond_range: boolean;
}

/** Steps per time constant, and kelvins that the arc's heat may add in one step. */
const STEPS_PER_TIME_CONSTANT = 25;
const RISE_PER_STEP = 5;

/**
 * Time constant of a conductor near a temperature.
 *
 * C (T - Ta) / loss(T).
 *
 * @param model - the lump [record], losses rising with temperature
 * @param temperature - conductor temperature [K], above ambient, <= 473
 * @returns time constant [s]
 * @source derived
 * @example
 * leadTimeConstant(linearHeatModel({ resistance_20: 0.000206, conductance: 0.736027738, capacity: 451.610849, ambient: 313.15 }), 350) // => 613.57857
 */
export function leadTimeConstant(model: HeatModel, temperature: number): number {
  return (model.capacity * (temperature - model.ambient)) / model.lossAt(temperature);
}

/**
 * Temperatures of conductors through a duty of arc on and off, from ambient.
 *
 * C dT/dt = I^2 R(T) - loss(T) for each, with classical Runge-Kutta steps; the currents may depend on all the
 * temperatures, and are found anew at each step. Stops where a conductor passes 200 degC, the end of the law of resistance.
 *
 * @param models - one lump per conductor [list], any number
 * @param currentsAt - current of each conductor [A] with the arc on, at given temperatures [K] [list], >= 0
 * @param duty - arc on and off in turn [list], durations >= 0 s
 * @param start - temperatures to start from [K], ambient if not stated
 * @returns the course of each conductor [list]
 * @source derived; Runge-Kutta of fourth order
 * @example
 * const lump = linearHeatModel({ resistance_20: 0.000206, conductance: 0.736027738, capacity: 451.610849, ambient: 313.15 });
 * leadTemperatures([lump], () => [500], [{ arc: true, duration: 360 }])[0].peak_K - 273.15 // => 76.06654
 */
export function leadTemperatures(
  models: readonly HeatModel[],
  currentsAt: (temperatures: readonly number[]) => readonly number[],
  duty: readonly DutyInterval[],
  start: readonly number[] = models.map((model) => model.ambient),
): readonly TemperatureCourse[] {
  const histories: TemperaturePoint[][] = start.map((temperature_K) => [{ time_s: 0, temperature_K }]);
  const timeConstant = Math.min(...models.map((model) => leadTimeConstant(model, HOTTEST)));
  let temperatures = [...start];
  let time = 0;
  let beyond = temperatures.map(() => false);
  for (const { arc, duration } of duty) {
    if (beyond.includes(true) || models.length === 0) break;
    const fastest = arc ? fastestRise(models, currentsAt(temperatures)) : 0;
    const step = Math.min(timeConstant / STEPS_PER_TIME_CONSTANT, RISE_PER_STEP / fastest);
    const count = Math.max(1, Math.ceil(duration / step));
    let change = temperatures.map(() => 0);
    for (let i = 0; i < count && duration > 0; i += 1) {
      // The currents of a step are those of its middle, foreseen from the step before.
      const middle = temperatures.map((t, k) => Math.min(HOTTEST, t + change[k]! / 2));
      const currents = arc ? currentsAt(middle) : models.map(() => 0);
      const next = temperatures.map((t, k) => stepped(models[k]!, currents[k]!, t, duration / count));
      change = next.map((t, k) => t - temperatures[k]!);
      temperatures = next;
      time += duration / count;
      beyond = temperatures.map((t) => t > HOTTEST);
      for (const [k, temperature_K] of temperatures.entries()) {
        histories[k]!.push({ time_s: time, temperature_K: Math.min(HOTTEST, temperature_K) });
      }
      if (beyond.includes(true)) break;
    }
  }
  return histories.map((history, k) => {
    const peak = history.reduce((best, point) => (point.temperature_K > best.temperature_K ? point : best));
    return { history, peak_K: peak.temperature_K, peak_s: peak.time_s, beyond_range: beyond[k]! };
  });
}

/** Fastest rise of any conductor if it lost nothing [K/s]. */
function fastestRise(models: readonly HeatModel[], currents: readonly number[]): number {
  return Math.max(
    ...models.map((model, i) => (currents[i]! ** 2 * model.resistanceAt(HOTTEST)) / model.capacity),
  );
}

/** Temperature of a conductor after a step at a current: classical Runge-Kutta. */
function stepped(model: HeatModel, current: number, from: number, step: number): number {
  const rate = (t: number): number =>
    (current ** 2 * model.resistanceAt(t) - model.lossAt(t)) / model.capacity;
  const a = rate(from);
  const b = rate(from + (step / 2) * a);
  const c = rate(from + (step / 2) * b);
  const d = rate(from + step * c);
  return from + (step / 6) * (a + 2 * b + 2 * c + d);
}

/**
 * Time a current that does not stop takes to bring a conductor to a temperature.
 *
 * The integral of C dT / (I^2 R(T) - loss(T)), by Simpson's rule.
 *
 * @param model - the lump [record], losses rising with temperature
 * @param current - current in the conductor [A], >= 0
 * @param limit - temperature to reach [K], <= 473
 * @param start - temperature to start from [K], ambient if not stated
 * @returns time, or undefined if it is never reached [s]
 * @source derived
 * @example
 * timeToTemperature(linearHeatModel({ resistance_20: 0.000206, conductance: 0.736027738, capacity: 451.610849, ambient: 313.15 }), 500, 273.15 + 76.0665358) // => 360.0000
 */
export function timeToTemperature(
  model: HeatModel,
  current: number,
  limit: number,
  start: number = model.ambient,
): number | undefined {
  if (limit <= start) return 0;
  const slowness = (t: number): number =>
    model.capacity / (current ** 2 * model.resistanceAt(t) - model.lossAt(t));
  const panels = 400;
  const width = (limit - start) / panels;
  let sum = 0;
  for (let i = 0; i <= panels; i += 1) {
    const value = slowness(start + i * width);
    if (!(value > 0 && Number.isFinite(value))) return undefined;
    sum += value * (i === 0 || i === panels ? 1 : i % 2 === 1 ? 4 : 2);
  }
  return (sum * width) / 3;
}

/** When a course first reaches a temperature [s], or undefined. */
export function firstReached(course: TemperatureCourse, limit: number): number | undefined {
  const at = course.history.findIndex((point) => point.temperature_K >= limit);
  if (at < 0) return undefined;
  if (at === 0) return 0;
  const [a, b] = [course.history[at - 1]!, course.history[at]!];
  return a.time_s + ((limit - a.temperature_K) / (b.temperature_K - a.temperature_K)) * (b.time_s - a.time_s);
}
