import type { Job } from '../../job/index.ts';
import { type DrawStream, drawStream, normalQuantile } from '../../numeric/index.ts';
import type { PlanOutcome } from '../../plan/index.ts';
import { beliefOfElectrode, depthRegressors, predictWear, type RemovalBelief } from '../../removal/index.ts';
import { type ExpectedPass, expectationOf } from '../expectation.ts';
import type { Channel, LogBatch } from '../log-batch.ts';
import type { EventKind } from '../outcome.ts';
import { type LoggedRow, RowLogger } from './row-logger.ts';

/** Faults that a rehearsal can show, and what `size` of each is. */
export type RehearsalFaultKind = Exclude<EventKind, 'touch_down' | 'restart_short' | 'electrode_change'>;

/** A fault asked for: SI. */
export interface RehearsalFault {
  readonly kind: RehearsalFaultKind;
  /** Number of the pass, from 1 [-]. */
  readonly pass: number;
  /** Place on the seam where it begins [m]. */
  readonly at: number;
  /** How long it lasts [s]. */
  readonly duration: number;
  /**
   * Drift: change of the level as a share, with its sign; slip and low air: share lost; spike: times the level;
   * clock step: how far [s]; else without meaning [-].
   */
  readonly size: number;
}

/** What a rehearsal is played with. */
export interface RehearsalInput {
  readonly job: Job;
  readonly plan: PlanOutcome;
  readonly belief: RemovalBelief;
  /** The seed, a whole number from 0 to 2^31 - 2 [-]. */
  readonly seed: number;
  /** Rows per second of the logger [1/s]. */
  readonly rate: number;
  readonly faults: readonly RehearsalFault[];
  /** Readings that the logger takes; all where left out. */
  readonly channels?: readonly Channel[] | undefined;
  /** The logger gives means over its interval, not instants. */
  readonly averages?: boolean | undefined;
}

/** Something that was made to happen, with its true place; SI. */
export interface RehearsalTruth {
  readonly kind: EventKind;
  /** Number of the pass, from 1 [-]. */
  readonly pass: number;
  /** Elapsed time at which it began [s]. */
  readonly start: number;
  /** Elapsed time at which it was over [s]. */
  readonly end: number;
  /** True place where it began [m]. */
  readonly from: number;
  /** True place where it was over [m]. */
  readonly to: number;
}

/** True depth at even places of the seam [m]. */
export interface RehearsalDepth {
  /** Distance between the places; the first lies half of it from the start [m]. */
  readonly cell: number;
  /** The depth at each [m]. */
  readonly depth: Float64Array;
}

/** A rehearsal as it is played. */
export interface Rehearsal {
  /** Rows, batch by batch. */
  readonly batches: Generator<LogBatch, void>;
  /** What happened so far; whole once the batches are. */
  readonly truth: readonly RehearsalTruth[];
  /** The depth that was cut, once the batches are whole. */
  readonly depth: () => RehearsalDepth;
}

/** All readings a rehearsed rig gives. */
export const REHEARSAL_CHANNELS: readonly Channel[] = [
  'voltage_V',
  'current_A',
  'travel_m_per_s',
  'position_m',
  'feed_m_per_s',
  'air_pressure_Pa',
];

/** How the rehearsed rig behaves: judgement, no source. */
const RIG = {
  /** Step of the simulation at most [s]. */
  step: 0.01,
  idle: 3,
  touch: 0.12,
  shortVolts: 9,
  shortAmps: 1.3,
  noLoad: 76,
  airStatic: 1.12,
  air: 6.2e5,
  /** Noise of arc voltage [V] and of current as a share, and how long it hangs together [s]. */
  voltNoise: 1.1,
  ampNoise: 0.015,
  noiseTime: 0.02,
  ripple: 0.04,
  rippleFrequency: 300.7,
  /** Touches too short to matter, per second, and their greatest length [s]. */
  microShorts: 0.4,
  microShortMost: 0.03,
  pause: 20,
  /** Cells of the true depth [m]. */
  cell: 0.002,
} as const;

/**
 * Plays a rig that runs a plan, with the faults asked for: readings as a logger takes them, and what truly happened.
 *
 * The depth is drawn from the belief with its four levels of spread; the readings bear noise, ripple and touches as a
 * real arc does. The same seed gives the same rows.
 *
 * @param input - job, plan, belief, seed, rate and faults [record], rate from 0.5 to 5000 per second
 * @returns rows to come, and the truth about them [record]
 * @source judgement, no source: a made-up rig; depth as `predictDepth`
 * @example
 * rehearse({ job: demoJob.job, plan: demoAnswer.basis.plan, belief: publishedBelief(metalOf('carbon_steel'), 'flat'), seed: 1, rate: 10, faults: [] }).truth.length // => 0
 */
export function rehearse(input: RehearsalInput): Rehearsal {
  const truth: RehearsalTruth[] = [];
  const rig = new Rig(input, truth);
  return { batches: rig.play(), truth, depth: () => rig.depth() };
}

class Rig {
  private readonly input: RehearsalInput;
  private readonly truth: RehearsalTruth[];
  private readonly stream: DrawStream;
  private readonly passes: readonly ExpectedPass[];
  private readonly volts: number;
  private readonly amps: number;
  private readonly wear: number;
  private readonly logger: RowLogger;
  private readonly dt: number;
  private readonly cells: number;
  private readonly energies: Float64Array[] = [];
  private time = 0;
  private place = 0;
  private voltNoise = 0;
  private ampNoise = 0;
  private microUntil = 0;

  constructor(input: RehearsalInput, truth: RehearsalTruth[]) {
    this.input = input;
    this.truth = truth;
    const { job, plan, belief, seed, rate } = input;
    this.stream = drawStream(seed);
    const expected = expectationOf(job, plan, belief);
    this.passes = expected.passes;
    this.volts = expected.voltage;
    this.amps = expected.current;
    this.wear = predictWear(belief, plan.electrode.diameter, 1).p50;
    this.dt = 1 / rate / Math.max(1, Math.ceil(1 / rate / RIG.step));
    this.cells = Math.max(1, Math.round(job.seam.length / RIG.cell));
    this.logger = new RowLogger(rate, this.dt, input.channels ?? REHEARSAL_CHANNELS, input.averages ?? false);
    this.place = expected.passes[0]?.from ?? 0;
  }

  *play(): Generator<LogBatch, void> {
    for (const pass of this.passes) {
      this.energies.push(new Float64Array(this.cells));
      this.place = pass.from;
      yield* this.wait(RIG.idle, true);
      yield* this.run(pass);
      yield* this.wait(RIG.pause, false);
    }
    yield* this.logger.rest();
  }

  depth(): RehearsalDepth {
    const { job, plan, belief, seed } = this.input;
    const { diameter } = plan.electrode;
    const known = beliefOfElectrode(belief, plan.electrode);
    const stream = drawStream(seed + 1);
    let share = stream.uniform();
    const node =
      known.depth.find(({ weight }) => {
        share -= weight;
        return share <= 0;
      }) ?? known.depth.at(-1)!;
    const law = drawLaw(node.mean, node.covariance, stream);
    const ofJob = node.levels.job * stream.normal();
    const cell = job.seam.length / this.cells;
    const depth = new Float64Array(this.cells);
    const tracks = plan.pattern.tracks;
    this.energies.forEach((energy) => {
      const ofPass = node.levels.pass * stream.normal();
      const course = maternCourse(this.cells, cell / known.seamRange, stream);
      const reach = diameter / cell / 2;
      for (let at = 0; at < this.cells; at += 1) {
        const from = Math.max(0, Math.round(at - reach));
        const to = Math.min(this.cells, Math.round(at + 1 + reach));
        let sum = 0;
        for (let k = from; k < to; k += 1) sum += energy[k]!;
        if (sum === 0) continue;
        const perLength = sum / ((to - from) * cell);
        const setting = {
          diameter,
          current: 1,
          voltage: perLength,
          travel: 1,
          pushAngle: job.kit.push_angle,
        };
        const [one, q, angle] = depthRegressors(setting, known.meltingEnergy) as [number, number, number];
        const ln =
          law[0]! * one + law[1]! * q + law[2]! * angle + ofJob + ofPass + node.levels.seam * course[at]!;
        depth[at]! += (diameter * Math.exp(ln)) / tracks;
      }
    });
    return { cell, depth };
  }

  /** The rig stands with no arc. */
  private *wait(time: number, live: boolean): Generator<LogBatch, void> {
    const end = this.time + time;
    while (this.time < end - this.dt / 2)
      yield* this.log({
        volts: live && this.time > end - time * 0.7 ? RIG.noLoad + 0.3 * this.stream.normal() : 0,
        amps: 0,
        speed: 0,
        feed: 0,
        air: RIG.airStatic * RIG.air,
      });
  }

  /** The electrode on the plate, to strike. */
  private *touch(time: number): Generator<LogBatch, void> {
    const end = this.time + time;
    while (this.time < end - this.dt / 2)
      yield* this.log({
        volts: RIG.shortVolts + 0.5 * this.stream.normal(),
        amps: RIG.shortAmps * this.amps,
        speed: 0,
        feed: 0,
        air: RIG.air,
      });
  }

  private *run(pass: ExpectedPass): Generator<LogBatch, void> {
    const { faults, plan, job } = this.input;
    const due = faults.filter((fault) => fault.pass === pass.number).sort((a, b) => a.at - b.at);
    const changes = plan.changes.filter((change) => change.pass === pass.number).map(({ at }) => at);
    this.tell('touch_down', pass, RIG.touch);
    yield* this.touch(RIG.touch);
    const moving = this.time + pass.dwell;
    const active: { fault: RehearsalFault; until: number; truth: RehearsalTruth }[] = [];
    while (this.place < pass.to) {
      while (due.length > 0 && due[0]!.at <= this.place) {
        const fault = due.shift()!;
        // a spike is one row, however long it was asked for
        const lasts = fault.kind === 'spike' ? 1 / this.input.rate : fault.duration;
        const truth = this.tell(fault.kind, pass, lasts);
        active.push({ fault, until: this.time + lasts, truth });
        if (fault.kind === 'clock_step') this.logger.stepClock(fault.size);
      }
      if (changes.length > 0 && changes[0]! <= this.place) {
        changes.shift();
        const away = job.rates.electrode_change_time;
        const began = this.time;
        this.tell('electrode_change', pass, away + RIG.touch);
        yield* this.wait(away, false);
        this.tell('restart_short', pass, RIG.touch);
        yield* this.touch(RIG.touch);
        // a fault lasts for as long with the arc burning
        for (const fault of active) fault.until += this.time - began;
        continue;
      }
      const has = (kind: RehearsalFaultKind) => active.find(({ fault }) => fault.kind === kind)?.fault;
      const out = has('arc_out') !== undefined;
      const short = has('short') !== undefined;
      const stands = has('stall') !== undefined || this.time < moving;
      const slip = has('slip')?.size ?? 0;
      const wheel = stands ? 0 : pass.travel;
      const micro = this.micro();
      const volts = out
        ? RIG.noLoad
        : short || micro
          ? RIG.shortVolts
          : this.arcVolts() * (1 + this.drift(active, 'voltage_drift'));
      const amps = out
        ? 0
        : short || micro
          ? RIG.shortAmps * this.amps
          : this.arcAmps() * (1 + this.drift(active, 'current_drift'));
      const before = this.place;
      this.place += wheel * (1 - slip) * this.dt;
      const lead = pass.travel * Math.max(0, moving - this.time);
      if (!out && !short) this.cut(before - lead, this.place - lead, volts * amps * this.dt);
      yield* this.log(
        {
          volts,
          amps,
          speed: wheel,
          feed: has('feed_stop') !== undefined || out ? 0 : this.wear * this.amps,
          air: RIG.air * (1 - (has('low_air')?.size ?? 0)) + 1500 * this.stream.normal(),
        },
        has('gap') !== undefined,
        has('stale_reading') !== undefined,
        has('spike')?.size,
      );
      for (let at = active.length - 1; at >= 0; at -= 1) {
        const { until, truth } = active[at]!;
        if (this.time < until - this.dt / 2) continue;
        Object.assign(truth, { end: this.time, to: this.place });
        active.splice(at, 1);
      }
    }
    for (const { truth } of active) Object.assign(truth, { end: this.time, to: this.place });
  }

  /** How far a drift has come: it grows over its first half and stays. */
  private drift(
    active: readonly { fault: RehearsalFault; until: number }[],
    kind: 'voltage_drift' | 'current_drift',
  ): number {
    const found = active.find(({ fault }) => fault.kind === kind);
    if (found === undefined) return 0;
    const { size, duration } = found.fault;
    const passed = this.time - (found.until - duration);
    return size * Math.min(1, passed / (duration / 2));
  }

  private micro(): boolean {
    if (this.time < this.microUntil) return true;
    if (this.stream.uniform() < RIG.microShorts * this.dt)
      this.microUntil = this.time + RIG.microShortMost * this.stream.uniform();
    return false;
  }

  private arcVolts(): number {
    const keep = Math.exp(-this.dt / RIG.noiseTime);
    this.voltNoise = keep * this.voltNoise + Math.sqrt(1 - keep ** 2) * this.stream.normal();
    return this.volts + RIG.voltNoise * this.voltNoise;
  }

  private arcAmps(): number {
    const keep = Math.exp(-this.dt / RIG.noiseTime);
    this.ampNoise = keep * this.ampNoise + Math.sqrt(1 - keep ** 2) * this.stream.normal();
    const ripple = RIG.ripple * Math.sin(2 * Math.PI * RIG.rippleFrequency * this.time);
    return this.amps * (1 + RIG.ampNoise * this.ampNoise + ripple);
  }

  private cut(from: number, to: number, energy: number): void {
    const { length } = this.input.job.seam;
    const at = (from + to) / 2;
    if (at < 0 || at >= length) return;
    this.energies.at(-1)![Math.floor((at / length) * this.cells)]! += energy;
  }

  private tell(kind: EventKind, pass: ExpectedPass, time: number): RehearsalTruth {
    const now = { start: this.time, end: this.time + time, from: this.place, to: this.place };
    const told = { kind, pass: pass.number, ...now };
    this.truth.push(told);
    return told;
  }

  private *log(
    row: Omit<LoggedRow, 'place'>,
    silent = false,
    stale = false,
    spike?: number,
  ): Generator<LogBatch, void> {
    this.time += this.dt;
    const full = this.logger.add({ ...row, place: this.place }, silent, stale, spike);
    if (full !== undefined) yield full;
  }
}

/** One draw of the law's coefficients. */
function drawLaw(
  mean: readonly number[],
  covariance: readonly (readonly number[])[],
  stream: DrawStream,
): number[] {
  // Cholesky of a 3 x 3 matrix, row by row.
  const lower = mean.map(() => [0, 0, 0]);
  for (let row = 0; row < 3; row += 1)
    for (let column = 0; column <= row; column += 1) {
      let value = covariance[row]![column]!;
      for (let k = 0; k < column; k += 1) value -= lower[row]![k]! * lower[column]![k]!;
      lower[row]![column] =
        row === column
          ? Math.sqrt(Math.max(0, value))
          : lower[column]![column]! > 0
            ? value / lower[column]![column]!
            : 0;
    }
  const z = mean.map(() => stream.normal());
  return mean.map((value, row) => value + lower[row]!.reduce((sum, each, k) => sum + each * z[k]!, 0));
}

/** A standardised Matern 3/2 course on even points, `apart` of its range apart. */
function maternCourse(points: number, apart: number, stream: DrawStream): Float64Array {
  const t = Math.sqrt(3) * apart;
  const decay = Math.exp(-t);
  const [aa, ab, ba, bb] = [decay * (1 + t), decay * t, -decay * t, decay * (1 - t)];
  const laa = Math.sqrt(Math.max(0, 1 - aa * aa - ab * ab));
  const lab = laa > 0 ? -(aa * ba + ab * bb) / laa : 0;
  const lbb = Math.sqrt(Math.max(0, 1 - ba * ba - bb * bb - lab * lab));
  const course = new Float64Array(points);
  let value = stream.normal();
  let slope = stream.normal();
  for (let at = 0; at < points; at += 1) {
    course[at] = value;
    const first = normalQuantile(stream.uniform());
    const next = aa * value + ab * slope + laa * first;
    slope = ba * value + bb * slope + lab * first + lbb * stream.normal();
    value = next;
  }
  return course;
}
