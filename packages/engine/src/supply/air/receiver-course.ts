import type { DutyInterval } from '../duty/index.ts';
import { AIR_GAS_CONSTANT, FREE_AIR_DENSITY } from './air-state.ts';
import type { AirSupply } from './air-supply.ts';
import { freeAirDelivered } from './compressor-delivery.ts';
import { solvePath } from './solve-path.ts';

/**
 * Sees the receiver at one moment of a duty: time since the torch was first opened [s], absolute pressure [Pa abs],
 * whether the compressor delivers from here on, and the place in the duty of the interval that the moment lies in.
 */
export type SeeReceiver = (time: number, pressure: number, compressorOn: boolean, interval: number) => void;

/** How the air in the receiver takes a change of pressure. */
export interface ReceiverGas {
  /** Factor on the rate of the pressure while it falls [-]: 1 isothermal, 1.4 without any heat from the wall. */
  readonly falling: number;
}

/** Stretches between atmosphere and cut-out in each of which the flow is taken as straight in the pressure. */
const STRETCHES = 240;
/** Cycles of the compressor in one interval that are followed one by one; those after them are the same and only counted. */
const CYCLES_SHOWN = 60;

/** Flow out of a receiver by its pressure, solved once for each pressure asked. */
export interface ReceiverDraw {
  /** Mass flow with the torch open. */
  readonly open: (pressure: number) => number;
  /** Mass flow with the torch shut: what others take. */
  readonly shut: (pressure: number) => number;
}

/** What leaves the receiver of a supply whose closed branches are left out. */
export function receiverDraw(supply: AirSupply): ReceiverDraw {
  const known = new Map<number, number>();
  const others = supply.path.reduce(
    (sum, item) => (item.kind === 'draw' ? sum + item.freeAir * FREE_AIR_DENSITY : sum),
    0,
  );
  return {
    open: (pressure) => {
      if (pressure <= supply.atmosphere) return 0;
      const found = known.get(pressure) ?? solvePath(supply, pressure)?.receiverFlow ?? 0;
      known.set(pressure, found);
      return found;
    },
    shut: (pressure) => (pressure > supply.atmosphere ? others : 0),
  };
}

/**
 * Follows the receiver through a duty, from full, and shows its moments in order; each interval begins and ends with one.
 * Tells how often the compressor starts to deliver [-].
 */
export type ReceiverFollower = (duty: readonly DutyInterval[], gas: ReceiverGas, see: SeeReceiver) => number;

/**
 * What follows the receiver through a duty, from full, the compressor at rest.
 *
 * V/(R T) dp/dt = delivered - taken. The rate depends on the pressure alone, so the way from one pressure to the next is
 * closed where the flow is straight between them; the work does not depend on how small the receiver is, since equal
 * cycles of the compressor are counted instead of followed. `marks` are pressures that moments shall lie on.
 */
export function receiverFollower(
  supply: AirSupply,
  draw: ReceiverDraw,
  marks: readonly number[] = [],
): ReceiverFollower {
  const knots = knotsOf(supply, marks);
  const cutIn = supply.receiver.cutIn + supply.atmosphere;
  const cutOut = supply.receiver.cutOut + supply.atmosphere;
  const states = [draw.shut, draw.open].map((taken) =>
    [false, true].map((on) => stepsOf(knots, rateOf(supply, taken, on))),
  );
  return (duty, { falling }, see) => {
    let starts = 0;
    let time = 0;
    let pressure = cutOut;
    let on = false;
    for (let interval = 0; interval < duty.length; interval += 1) {
      const { arc, duration } = duty[interval]!;
      const end = time + duration;
      see(time, pressure, on, interval);
      const ofArc = states[arc ? 1 : 0]!;
      let startedAt: number | undefined;
      let cycles = 0;
      while (time < end) {
        const step = ofArc[on ? 1 : 0]!(pressure);
        // A pressure that falls without heat from the wall falls quicker: the same way in less time.
        const quicker = step.rate < 0 ? falling : 1;
        if (step.time >= (end - time) * quicker) {
          pressure = pressureAfter(step, pressure, (end - time) * quicker);
          time = end;
          see(time, pressure, on, interval);
          break;
        }
        time += step.time / quicker;
        pressure = step.to;
        if (!on && pressure === cutIn) {
          on = true;
          starts += 1;
          cycles += 1;
          if (startedAt !== undefined && cycles > CYCLES_SHOWN) {
            const alike = Math.floor((end - time) / (time - startedAt));
            see(time, pressure, on, interval);
            starts += alike;
            time += alike * (time - startedAt);
            startedAt = undefined;
            cycles = 0;
          } else startedAt = time;
        } else if (on && pressure === cutOut) on = false;
        see(time, pressure, on, interval);
      }
    }
    return starts;
  };
}

/** Pressures between which the flow is taken as straight, rising; where something changes is among them. */
function knotsOf(
  { atmosphere, receiver, compressor }: AirSupply,
  marks: readonly number[],
): readonly number[] {
  const most = receiver.cutOut + atmosphere;
  const even = Array.from(
    { length: STRETCHES },
    (_, i) => atmosphere + ((most - atmosphere) * i) / STRETCHES,
  );
  const own = [
    receiver.cutIn + atmosphere,
    ...compressor.delivery.map((point) => point.pressure + atmosphere),
  ];
  const inside = [...own, ...marks].filter((pressure) => pressure > atmosphere && pressure < most);
  return [...new Set([...even, ...inside, most])].sort((a, b) => a - b);
}

/** Rate of an isothermal receiver's pressure by its absolute pressure [Pa/s]. */
function rateOf(
  { atmosphere, temperature, receiver, compressor }: AirSupply,
  taken: (pressure: number) => number,
  on: boolean,
): (pressure: number) => number {
  const stiffness = (AIR_GAS_CONSTANT * temperature) / receiver.volume;
  return (pressure) => {
    // The last stated pressure still counts as stated when rounding lifts the receiver above it.
    const gauge = Math.min(pressure - atmosphere, receiver.cutOut);
    const delivered = on ? freeAirDelivered(compressor, gauge) * FREE_AIR_DENSITY : 0;
    return stiffness * (delivered - taken(pressure));
  };
}

/** The way to the next knot: its time, without end where the receiver settles before it or rests. */
interface Step {
  readonly time: number;
  readonly to: number;
  /** Rate of the pressure at its start [Pa/s], and how the rate grows with time [1/s]. */
  readonly rate: number;
  readonly growth: number;
}

/** The step from a pressure; from a knot it is worked out once. */
function stepsOf(knots: readonly number[], rateAt: (pressure: number) => number): (pressure: number) => Step {
  const rates = new Map<number, number>();
  const rateAtKnot = (place: number): number => {
    const rate = rates.get(place) ?? rateAt(knots[place]!);
    rates.set(place, rate);
    return rate;
  };
  const stepFrom = (from: number): Step => {
    const above = firstAbove(knots, from);
    const own = knots[above - 1] === from ? above - 1 : -1;
    const rate = own < 0 ? rateAt(from) : rateAtKnot(own);
    const next = rate > 0 ? above : rate < 0 ? (own < 0 ? above - 1 : own - 1) : -1;
    const to = knots[next];
    if (to === undefined) return { time: Number.POSITIVE_INFINITY, to: from, rate: 0, growth: 0 };
    const change = rateAtKnot(next) - rate;
    const growth = change / (to - from);
    const gained = change / rate;
    // A rate that dies away before the knot leaves the receiver where it settles.
    if (!(gained > -1)) return { time: Number.POSITIVE_INFINITY, to: from, rate, growth };
    const even = Math.abs(gained) < 1e-12;
    return { time: even ? (to - from) / rate : Math.log1p(gained) / growth, to, rate, growth };
  };
  const known = new Map(knots.map((knot) => [knot, undefined as Step | undefined]));
  return (pressure) => {
    const found = known.get(pressure);
    if (found !== undefined) return found;
    const step = stepFrom(pressure);
    if (known.has(pressure)) known.set(pressure, step);
    return step;
  };
}

/** Pressure some time, shorter than the step's, from its start. */
function pressureAfter({ rate, growth }: Step, from: number, time: number): number {
  return Math.abs(growth * time) < 1e-9
    ? from + rate * time
    : from + (rate * Math.expm1(growth * time)) / growth;
}

/** Place of the first knot above a pressure. */
function firstAbove(knots: readonly number[], pressure: number): number {
  let low = 0;
  let high = knots.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (knots[middle]! > pressure) high = middle;
    else low = middle + 1;
  }
  return low;
}
