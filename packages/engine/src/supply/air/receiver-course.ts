import type { DutyInterval } from '../duty/index.ts';
import { AIR_GAS_CONSTANT, FREE_AIR_DENSITY } from './air-state.ts';
import type { AirSupply } from './air-supply.ts';
import { freeAirDelivered } from './compressor-delivery.ts';
import { solvePath } from './solve-path.ts';

/** The receiver at one moment of a duty. */
export interface ReceiverMoment {
  /** Time since the torch was first opened [s]. */
  readonly time: number;
  /** Absolute pressure in the receiver [Pa abs]. */
  readonly pressure: number;
  /** Whether the compressor delivers from here on. */
  readonly compressorOn: boolean;
  /** Place in the duty of the interval that this moment lies in [-]. */
  readonly interval: number;
}

/** How the receiver goes through a duty. */
export interface ReceiverCourse {
  /** Moments in order; each interval begins and ends with one. */
  readonly moments: readonly ReceiverMoment[];
  /** How often the compressor starts to deliver [-]. */
  readonly starts: number;
}

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

/** Follows the receiver through duties, from full. */
export type ReceiverFollower = (duty: readonly DutyInterval[], gas?: ReceiverGas) => ReceiverCourse;

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
  const rates = { open: rateOf(supply, draw.open, knots), shut: rateOf(supply, draw.shut, knots) };
  return (duty, { falling } = { falling: 1 }) => {
    const moments: ReceiverMoment[] = [];
    let starts = 0;
    let time = 0;
    let pressure = cutOut;
    let on = false;
    for (const [interval, { arc, duration }] of duty.entries()) {
      const end = time + duration;
      const put = (): void => void moments.push({ time, pressure, compressorOn: on, interval });
      put();
      const rateAt = arc ? rates.open : rates.shut;
      let startedAt: number | undefined;
      let cycles = 0;
      while (time < end) {
        const step = stepOf(knots, pressure, (place, p) => {
          const rate = rateAt(place, p, on);
          return rate < 0 ? falling * rate : rate;
        });
        if (step.time >= end - time) {
          pressure = step.after(end - time);
          time = end;
          put();
          break;
        }
        time += step.time;
        pressure = step.to;
        if (!on && pressure === cutIn) {
          on = true;
          starts += 1;
          cycles += 1;
          if (startedAt !== undefined && cycles > CYCLES_SHOWN) {
            const alike = Math.floor((end - time) / (time - startedAt));
            put();
            starts += alike;
            time += alike * (time - startedAt);
            startedAt = undefined;
            cycles = 0;
          } else startedAt = time;
        } else if (on && pressure === cutOut) on = false;
        put();
      }
    }
    return { moments, starts };
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

/** Rate of the receiver's pressure by its pressure, which lies on the knot of this place, or on none: -1; and by the compressor [Pa/s]. */
type Rate = (place: number, pressure: number, on: boolean) => number;

/** The rate of an isothermal receiver; at the knots it is worked out once. */
function rateOf(supply: AirSupply, taken: (pressure: number) => number, knots: readonly number[]): Rate {
  const { atmosphere, temperature, receiver, compressor } = supply;
  const stiffness = (AIR_GAS_CONSTANT * temperature) / receiver.volume;
  const atKnots = [new Float64Array(knots.length), new Float64Array(knots.length)].map((each) =>
    each.fill(Number.NaN),
  );
  const rateAt = (pressure: number, on: boolean): number => {
    // The last stated pressure still counts as stated when rounding lifts the receiver above it.
    const gauge = Math.min(pressure - atmosphere, receiver.cutOut);
    const delivered = on ? freeAirDelivered(compressor, gauge) * FREE_AIR_DENSITY : 0;
    return stiffness * (delivered - taken(pressure));
  };
  return (place, pressure, on) => {
    if (place < 0) return rateAt(pressure, on);
    const known = atKnots[on ? 1 : 0]!;
    if (Number.isNaN(known[place]!)) known[place] = rateAt(pressure, on);
    return known[place]!;
  };
}

/** The way to the next knot: its time, without end where the receiver settles before it or rests. */
interface Step {
  readonly time: number;
  readonly to: number;
  /** Pressure some time, shorter than `time`, from now. */
  readonly after: (time: number) => number;
}

function stepOf(
  knots: readonly number[],
  from: number,
  rateAt: (place: number, pressure: number) => number,
): Step {
  const rest: Step = { time: Number.POSITIVE_INFINITY, to: from, after: () => from };
  const above = firstAbove(knots, from);
  const own = knots[above - 1] === from ? above - 1 : -1;
  const rate = rateAt(own, from);
  const next = rate > 0 ? above : rate < 0 ? (own < 0 ? above - 1 : own - 1) : -1;
  const to = knots[next];
  if (to === undefined) return rest;
  const change = rateAt(next, to) - rate;
  const growth = change / (to - from);
  const after = (time: number): number =>
    Math.abs(growth * time) < 1e-9 ? from + rate * time : from + (rate * Math.expm1(growth * time)) / growth;
  const gained = change / rate;
  // A rate that dies away before the knot leaves the receiver where it settles.
  if (!(gained > -1)) return { ...rest, after };
  const even = Math.abs(gained) < 1e-12;
  return { time: even ? (to - from) / rate : Math.log1p(gained) / growth, to, after };
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
