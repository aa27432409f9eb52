import type { Issue, Outcome } from '../../issue/index.ts';
import { bracketedRoot, integrateUntil } from '../../numeric/index.ts';
import { inUnit } from '../../quantity/index.ts';
import { airPoint, regulatorIndex, withOpenBranches } from './air-point.ts';
import { AIR_GAS_CONSTANT, FREE_AIR_DENSITY } from './air-state.ts';
import type { AirSupply } from './air-supply.ts';
import { freeAirDelivered } from './compressor-delivery.ts';
import { type PathState, solvePath } from './solve-path.ts';

/** What is asked of the air over a seam. */
export interface AirWish {
  /** Flowing pressure wanted [Pa gauge]. */
  readonly pressure: number;
  /** Where it is wanted: behind the last regulator, or before the torch. */
  readonly at: 'regulator' | 'torch';
  /** Time for which the torch blows without a pause [s]. */
  readonly time: number;
}

/** The receiver at one moment of the seam. */
export interface DrawdownSample {
  /** Time since the torch was opened [s]. */
  readonly time_s: number;
  /** Pressure in the receiver [kPa gauge]. */
  readonly receiver_kPa: number;
  /** Whether the compressor delivers from here on. */
  readonly compressor_on: boolean;
}

/** How the receiver's pressure goes over the seam. */
export interface Drawdown {
  /** The receiver in time, at the steps of the solution. */
  readonly samples: readonly DrawdownSample[];
  /** Lowest pressure in the receiver [kPa gauge]. */
  readonly lowest_kPa: number;
  /** Lowest flowing pressure at the point asked for [kPa gauge]. */
  readonly lowest_flowing_kPa: number;
  /** Pressure in the receiver below which the wish is not met; null where no pressure up to the cut-out meets it [kPa gauge]. */
  readonly needed_kPa: number | null;
  /** Time from which the flowing pressure is below the wanted one; null where that does not happen [s]. */
  readonly below_from_s: number | null;
  /** How often the compressor starts to deliver; followed up to 500 starts [-]. */
  readonly compressor_starts: number;
  /** Things to know that do not prevent the answer. */
  readonly cautions: readonly Issue[];
}

/** Starts of the compressor after which the rest of the seam repeats what was seen and is not followed. */
const STARTS_MOST = 500;
/** Change over one stretch below which the receiver counts as settled, as a share of its pressure [-]. */
const SETTLED = 1e-6;
/** Time constants of the receiver that are followed before it is asked whether it has settled [-]. */
const STRETCH = 20;
const ERRORS = { relative: 1e-9, absolute: 1e-3 };

/**
 * Pressure in the receiver over the seam, and from when on the flowing pressure is too low.
 *
 * V/(R T) dp/dt = delivered - taken, isothermal, with the flow of the whole path at each pressure; the compressor
 * starts at the cut-in and stops at the cut-out. The seam starts with a full receiver, the compressor at rest.
 *
 * @param supply - the air supply [record], see AirSupply
 * @param wish - flowing pressure, where and for how long [record], pressure and time > 0
 * @returns the course of the receiver, or why there is none [record]
 * @source mass balance, derived; the flow as in airPoint
 * @example
 * const supply = { atmosphere: 1e5, temperature: 293.15, compressor: { delivery: [{ pressure: 7e5, freeAir: 0 }] }, receiver: { volume: 0.5, cutIn: 1e5, cutOut: 7e5 }, path: [], torch: { kind: 'conductance', conductance: 8e-8, criticalRatio: 0.5 } };
 * airDrawdown(supply, { pressure: 4e5, at: 'torch', time: 100 }).value.below_from_s // => 29.4...
 */
export function airDrawdown(supply: AirSupply, wish: AirWish): Outcome<Drawdown> {
  const wrong = checkWish(wish);
  if (wrong.length > 0) return { ok: false, issues: wrong };
  const start = airPoint(supply, supply.receiver.cutOut);
  if (!start.ok) return start;
  const open = withOpenBranches(supply);
  const course = follow(open, wish.time);
  const lowest = Math.min(...course.samples.map(({ pressure }) => pressure));
  const needed = neededPressure(open, wish);
  const flowing = (receiver: number): number => flowingAt(open, wish.at, receiver);
  const kPa = (absolute: number): number => inUnit(absolute - supply.atmosphere, 'kPa');
  return {
    ok: true,
    value: {
      samples: course.samples.map(({ time, pressure, on }) => ({
        time_s: time,
        receiver_kPa: kPa(pressure),
        compressor_on: on,
      })),
      lowest_kPa: kPa(lowest),
      lowest_flowing_kPa: kPa(flowing(lowest)),
      needed_kPa: needed === undefined ? null : kPa(needed),
      below_from_s: needed === undefined ? 0 : (crossing(open, course.samples, needed) ?? null),
      compressor_starts: course.starts,
      cautions: smallReceiver(open, start.value.receiver_flow_L_per_min, needed),
    },
  };
}

/** What is wrong with a wish, empty when nothing is. */
export function checkWish({ pressure, time }: AirWish): readonly Issue[] {
  const issues: Issue[] = [];
  if (!(pressure > 0 && Number.isFinite(pressure))) {
    const message = `The flowing pressure wanted is ${pressure} Pa; a pressure above 0 is needed, such as 550000 Pa.`;
    issues.push({ code: 'AIR_VALUE', path: 'wish.pressure', message });
  }
  if (!(time > 0 && Number.isFinite(time))) {
    const message = `The torch is said to blow for ${time} s; a time above 0 is needed, such as 300 s.`;
    issues.push({ code: 'AIR_VALUE', path: 'wish.time', message });
  }
  return issues;
}

/** Absolute flowing pressure at the point asked for; the atmosphere where nothing flows. */
export function flowingAt(supply: AirSupply, at: AirWish['at'], receiver: number): number {
  const state: PathState | undefined = solvePath(supply, receiver);
  if (state === undefined) return supply.atmosphere;
  return state.pressures[at === 'torch' ? supply.path.length : regulatorIndex(supply.path)]!;
}

/** Absolute receiver pressure that just gives the wanted flowing pressure; undefined where the cut-out does not. */
function neededPressure(supply: AirSupply, wish: AirWish): number | undefined {
  const { atmosphere, receiver } = supply;
  const wanted = wish.pressure + atmosphere;
  const most = receiver.cutOut + atmosphere;
  const excess = (pressure: number): number => flowingAt(supply, wish.at, pressure) / wanted - 1;
  if (excess(most) < -1e-9) return undefined;
  // A regulator set to the wanted pressure reaches it exactly: a hair below counts as reached.
  return bracketedRoot((pressure) => excess(pressure) + 1e-9, atmosphere * 1.000001, most, 1e-6);
}

interface Moment {
  readonly time: number;
  readonly pressure: number;
  readonly on: boolean;
}

/** Rate of the receiver's absolute pressure. */
function rateOf(supply: AirSupply, on: boolean): (pressure: number) => number {
  const { atmosphere, temperature, receiver, compressor } = supply;
  const stiffness = (AIR_GAS_CONSTANT * temperature) / receiver.volume;
  return (pressure) => {
    const taken = pressure > atmosphere ? (solvePath(supply, pressure)?.receiverFlow ?? 0) : 0;
    // The last stated pressure still counts as stated when rounding lifts the receiver above it.
    const gauge = Math.min(pressure - atmosphere, receiver.cutOut);
    const delivered = on ? freeAirDelivered(compressor, gauge) * FREE_AIR_DENSITY : 0;
    return stiffness * (delivered - taken);
  };
}

function follow(
  supply: AirSupply,
  end: number,
): { readonly samples: readonly Moment[]; readonly starts: number } {
  const { atmosphere, receiver } = supply;
  const cutIn = receiver.cutIn + atmosphere;
  const cutOut = receiver.cutOut + atmosphere;
  const samples: Moment[] = [];
  let time = 0;
  let pressure = cutOut;
  let on = false;
  let starts = 0;
  const emptying = Math.abs(rateOf(supply, false)(cutOut));
  const stretch = (STRETCH * cutOut) / emptying;
  while (time < end && starts < STARTS_MOST) {
    const rate = rateOf(supply, on);
    const loaded = on;
    const before = pressure;
    const until = Math.min(end, time + stretch);
    const run = integrateUntil((_, [p]) => [rate(p!)], { time, state: [pressure] }, until, {
      ...ERRORS,
      event: (_, [p]) => (loaded ? cutOut - p! : p! - cutIn),
    });
    samples.push(...run.times.map((at, i) => ({ time: at, pressure: run.states[i]![0]!, on: loaded })));
    time = run.times.at(-1)!;
    pressure = run.stopped ? (on ? cutOut : cutIn) : run.states.at(-1)![0]!;
    if (run.stopped) {
      on = !on;
      if (on) starts += 1;
    } else if (Math.abs(pressure - before) < SETTLED * pressure) {
      samples.push({ time: end, pressure, on });
      break;
    }
  }
  return { samples, starts };
}

/** First time at which the receiver falls below a pressure. */
function crossing(supply: AirSupply, samples: readonly Moment[], needed: number): number | undefined {
  if (samples[0]!.pressure < needed) return 0;
  const after = samples.findIndex(({ pressure }) => pressure < needed * (1 - 1e-9));
  if (after < 0) return undefined;
  const { time, pressure, on } = samples[after - 1]!;
  const rate = rateOf(supply, on);
  const run = integrateUntil((_, [p]) => [rate(p!)], { time, state: [pressure] }, samples[after]!.time, {
    ...ERRORS,
    event: (_, [p]) => p! - needed,
  });
  return run.times.at(-1)!;
}

/** A receiver that lasts less than a minute without the compressor is told of. */
function smallReceiver(supply: AirSupply, flow: number, needed: number | undefined): readonly Issue[] {
  const { atmosphere, receiver, temperature } = supply;
  const from = receiver.cutOut + atmosphere;
  const to = Math.min(from, Math.max(needed ?? from, atmosphere));
  const usable = ((from - to) * receiver.volume) / (AIR_GAS_CONSTANT * temperature);
  const seconds = usable / (FREE_AIR_DENSITY * (flow / 6e4));
  if (seconds >= 60 || needed === undefined) return [];
  const message = `The receiver of ${(receiver.volume * 1000).toFixed(0)} L holds usable air for ${seconds.toFixed(0)} s at the flow of the torch, less than a minute: the compressor must carry the flow.`;
  return [{ code: 'AIR_RECEIVER_SMALL', path: 'receiver.volume', message }];
}
