import type { Issue, Outcome } from '../../issue/index.ts';
import { bracketedRoot } from '../../numeric/index.ts';
import type { DutyInterval } from '../duty/index.ts';
import { type AirPoint, airPoint, regulatorIndex, withOpenBranches } from './air-point.ts';
import { AIR_GAS_CONSTANT, FREE_AIR_DENSITY } from './air-state.ts';
import type { AirSupply } from './air-supply.ts';
import {
  type ReceiverFollower,
  type ReceiverGas,
  receiverDraw,
  receiverFollower,
} from './receiver-course.ts';
import { type PathState, solvePath } from './solve-path.ts';

/** What is asked of the air while the torch blows. */
export interface AirWish {
  /** Flowing pressure wanted [Pa gauge]. */
  readonly pressure: number;
  /** Where it is wanted: behind the last regulator, or before the torch. */
  readonly at: 'regulator' | 'torch';
}

/** The receiver at one moment of the duty. */
export interface DrawdownSample {
  /** Time since the torch was first opened [s]. */
  readonly time: number;
  /** Pressure in the receiver [Pa gauge]. */
  readonly receiver: number;
  /** Whether the compressor delivers from here on. */
  readonly compressorOn: boolean;
  /** Place in the duty of the interval that it lies in [-]. */
  readonly interval: number;
}

/** Where in the duty the flowing pressure is first too low. */
export interface DrawdownBelow {
  /** Since the torch was first opened [s]. */
  readonly time: number;
  /** Pass, from 1 [-]. */
  readonly pass: number;
  /** Since the torch was opened for that pass [s]. */
  readonly intoPass: number;
  /** Time for which the torch has blown by then, pauses left out [s]. */
  readonly blown: number;
}

/** How the receiver's pressure goes over all passes and the pauses between them. */
export interface Drawdown {
  /** The receiver in time, at the steps of the solution. */
  readonly samples: readonly DrawdownSample[];
  /** Lowest pressure in the receiver while the torch blows [Pa gauge]. */
  readonly lowest: number;
  /** The same for each pass, in order [Pa gauge]. */
  readonly lowestByPass: readonly number[];
  /** The same where the draw is so quick that no heat comes from the wall: the lower end of what is to be expected [Pa gauge]. */
  readonly lowestQuick: number;
  /** Lowest flowing pressure at the point asked for [Pa gauge]. */
  readonly lowestFlowing: number;
  /** Pressure in the receiver below which the wish is not met; undefined where no pressure up to the cut-out meets it [Pa gauge]. */
  readonly needed: number | undefined;
  /** Where the flowing pressure first is below the wanted one; undefined where that does not happen. */
  readonly below: DrawdownBelow | undefined;
  /** The same for the quick draw. */
  readonly belowQuick: DrawdownBelow | undefined;
  /** How often the compressor starts to deliver [-]. */
  readonly compressorStarts: number;
  /** Things to know that do not prevent the answer. */
  readonly cautions: readonly Issue[];
}

/** A slow draw takes its heat from the wall; a quick one takes none, and the pressure falls by the ratio of specific heats more. */
const SLOW: ReceiverGas = { falling: 1 };
const QUICK: ReceiverGas = { falling: 1.4 };

/**
 * Pressure in the receiver over all passes and pauses, and from when on the flowing pressure is too low.
 *
 * V/(R T) dp/dt = delivered - taken, with the flow of the whole path at each pressure; the compressor starts at the
 * cut-in and stops at the cut-out. It begins with a full receiver, the compressor at rest; in a pause the torch is shut
 * and only others take air. Isothermal, as a slow draw is; beside it the quick draw that takes no heat from the wall,
 * whose pressure falls 1.4 times as fast and rises no faster: what happens lies between the two.
 *
 * @param supply - the air supply [record], see AirSupply
 * @param wish - flowing pressure and where [record], pressure > 0
 * @param duty - torch open and shut in turn [list], durations >= 0 s, open at least once
 * @returns the course of the receiver, or why there is none [record]
 * @source mass balance and first law, derived; the flow as in airPoint
 * @example
 * const supply = { atmosphere: 1e5, temperature: 293.15, compressor: { delivery: [{ pressure: 7e5, freeAir: 0 }] }, receiver: { volume: 0.5, cutIn: 1e5, cutOut: 7e5 }, path: [], torch: { kind: 'conductance', conductance: 8e-8, criticalRatio: 0.5 } };
 * airDrawdown(supply, { pressure: 4e5, at: 'torch' }, [{ arc: true, duration: 100 }]).value.below.time // => 29.4...
 */
export function airDrawdown(
  supply: AirSupply,
  wish: AirWish,
  duty: readonly DutyInterval[],
): Outcome<Drawdown> {
  const wrong = checkDuty(duty);
  if (wrong.length > 0) return { ok: false, issues: wrong };
  const follow = drawdownFollower(supply, wish);
  return follow.ok ? { ok: true, value: follow.value(duty) } : follow;
}

/** As airDrawdown, for many checked duties of one supply: the flow at each pressure is solved once for all of them. */
export function drawdownFollower(
  supply: AirSupply,
  wish: AirWish,
): Outcome<(duty: readonly DutyInterval[]) => Drawdown> {
  const wrong = checkWish(wish);
  if (wrong.length > 0) return { ok: false, issues: wrong };
  const start = airPoint(supply, supply.receiver.cutOut);
  if (!start.ok) return start;
  const open = withOpenBranches(supply);
  const draw = receiverDraw(open);
  const needed = neededPressure(open, wish);
  const marks = needed === undefined ? [] : [needed];
  const followed = receiverFollower(open, draw, marks);
  const gauge = (absolute: number): number => absolute - supply.atmosphere;
  const cautions = smallReceiver(open, start.value, needed);
  return {
    ok: true,
    value: (duty) => {
      const slow = watched(followed, duty, SLOW, needed);
      const quick = watched(followed, duty, QUICK, needed);
      const lowest = Math.min(...slow.lowestByPass);
      return {
        // Written out only where they are told: a search follows many duties for their lowest pressure.
        get samples() {
          const samples: DrawdownSample[] = [];
          followed(duty, SLOW, (time, pressure, compressorOn, interval) => {
            samples.push({ time, receiver: gauge(pressure), compressorOn, interval });
          });
          return samples;
        },
        lowest: gauge(lowest),
        lowestByPass: slow.lowestByPass.map(gauge),
        lowestQuick: gauge(Math.min(...quick.lowestByPass)),
        lowestFlowing: gauge(flowingAt(open, wish.at, lowest)),
        needed: needed === undefined ? undefined : gauge(needed),
        below: slow.below,
        belowQuick: quick.below,
        compressorStarts: slow.starts,
        cautions,
      };
    },
  };
}

/** What is wrong with a wish, empty when nothing is. */
export function checkWish({ pressure }: AirWish): readonly Issue[] {
  if (pressure > 0 && Number.isFinite(pressure)) return [];
  const message = `The flowing pressure wanted is ${pressure} Pa; a pressure above 0 is needed, such as 550000 Pa.`;
  return [{ code: 'AIR_VALUE', path: 'wish.pressure', message }];
}

function checkDuty(duty: readonly DutyInterval[]): readonly Issue[] {
  const sound = duty.every(({ duration }) => duration >= 0 && Number.isFinite(duration));
  const time = duty.reduce((sum, { arc, duration }) => (arc ? sum + duration : sum), 0);
  if (sound && time > 0) return [];
  const message = `The torch is said to blow for ${time} s; a time above 0 is needed, such as 300 s.`;
  return [{ code: 'AIR_VALUE', path: 'duty', message }];
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

/** What a search wants to know of the receiver's way through a duty. */
interface Watched {
  /** Lowest absolute pressure in each interval in which the torch blows [Pa abs]. */
  readonly lowestByPass: readonly number[];
  readonly below: DrawdownBelow | undefined;
  readonly starts: number;
}

/** Follows a duty for its lowest pressures, and for where the receiver, while the torch blows, is first below the one needed. */
function watched(
  follow: ReceiverFollower,
  duty: readonly DutyInterval[],
  gas: ReceiverGas,
  needed: number | undefined,
): Watched {
  const blows = duty.map(({ arc, duration }) => arc && duration > 0);
  const lowest = duty.map(() => Number.POSITIVE_INFINITY);
  const enough = needed === undefined ? Number.POSITIVE_INFINITY : needed * (1 - 1e-9);
  let fell: { readonly time: number; readonly interval: number } | undefined;
  let [timeBefore, intervalBefore] = [0, -1];
  const starts = follow(duty, gas, (time, pressure, _, interval) => {
    if (pressure < lowest[interval]!) lowest[interval] = pressure;
    // It fell through the pressure at the moment before, if that belongs to the same pass.
    if (fell === undefined && blows[interval]! && pressure < enough)
      fell = { time: intervalBefore === interval ? timeBefore : time, interval };
    [timeBefore, intervalBefore] = [time, interval];
  });
  return {
    lowestByPass: lowest.filter((_, i) => blows[i]!),
    below: fell && belowAt(duty, blows, fell),
    starts,
  };
}

/** A moment of a duty as the pass that it lies in, and how long the torch has blown by then. */
function belowAt(
  duty: readonly DutyInterval[],
  blows: readonly boolean[],
  { time, interval }: { readonly time: number; readonly interval: number },
): DrawdownBelow {
  const before = duty.slice(0, interval);
  const passes = before.filter((_, i) => blows[i]!);
  const lasting = (of: readonly DutyInterval[]): number =>
    of.reduce((sum, { duration }) => sum + duration, 0);
  const intoPass = time - lasting(before);
  return { time, pass: passes.length + 1, intoPass, blown: lasting(passes) + intoPass };
}

/** A receiver that lasts less than a minute without the compressor is told of. */
function smallReceiver(supply: AirSupply, full: AirPoint, needed: number | undefined): readonly Issue[] {
  const { atmosphere, receiver, temperature } = supply;
  const from = receiver.cutOut + atmosphere;
  const to = Math.min(from, Math.max(needed ?? from, atmosphere));
  const usable = ((from - to) * receiver.volume) / (AIR_GAS_CONSTANT * temperature);
  const seconds = usable / (FREE_AIR_DENSITY * full.receiverFlow);
  if (seconds >= 60 || needed === undefined) return [];
  const message = `The receiver of ${(receiver.volume * 1000).toFixed(0)} L holds usable air for ${seconds.toFixed(0)} s at the flow of the torch, less than a minute: the compressor must carry the flow.`;
  return [{ code: 'AIR_RECEIVER_SMALL', path: 'receiver.volume', message }];
}
