import {
  AIR_SHARE,
  AIR_TIME,
  FEED_SHARE,
  FEED_TIME,
  SLIP_SHARE,
  SLIP_TIME,
  SLIP_WAY,
  SPEED_TIME,
  STALE_TIME,
  STALL_SHARE,
} from './event-thresholds.ts';
import type { EventFacts } from './event-words.ts';
import { Lasting, type Mark, type Stretch } from './lasting.ts';
import type { LogLevels } from './levels.ts';
import type { LogWay } from './log-way.ts';
import type { OpenPass } from './open-pass.ts';
import type { EventKind } from './outcome.ts';
import type { Row } from './row.ts';
import type { SteadyReading } from './steady-reading.ts';

/** What is told of an event beside how long it took. */
type Facts = Omit<EventFacts, 'duration'>;

/** Tells what has lasted for long enough. */
type Tell = (kind: EventKind, stretch: Stretch, facts: Facts) => void;

/** Looks for what fails while the arc burns: travel, feed, air, a slipping wheel, readings that stand still. */
export class ArcWatch {
  private readonly levels: LogLevels;
  private readonly volts: SteadyReading;
  private readonly amps: SteadyReading;
  private readonly watched: {
    readonly kind: EventKind;
    readonly lasting: Lasting;
    readonly facts: () => Facts;
  }[] = [];
  private readonly stall: Lasting;
  private readonly feed: Lasting;
  private readonly pressure: Lasting;
  private readonly flow: Lasting;
  private readonly slip: Lasting;
  private readonly staleVolts: Lasting;
  private readonly staleAmps: Lasting;
  private lowAir = Number.POSITIVE_INFINITY;
  private lowFlow = Number.POSITIVE_INFINITY;
  private speedFrom: Mark = { time: 0, row: 0, way: 0 };
  private slow = false;
  private slipFrom = { time: 0, row: 0, way: 0, wheel: 0 };
  private slipSum = { wheel: 0, rail: 0 };

  constructor(
    levels: LogLevels,
    lossWindow: number,
    readings: { readonly volts: SteadyReading; readonly amps: SteadyReading },
    tell: Tell,
  ) {
    this.levels = levels;
    this.volts = readings.volts;
    this.amps = readings.amps;
    const { interval } = levels;
    const bridge = Math.max(0.1, 2.5 * interval);
    const lasting = (kind: EventKind, least: number, facts: () => Facts, told?: () => void): Lasting => {
      const each = new Lasting(bridge, Math.max(least, 1.5 * interval), (stretch) => {
        tell(kind, stretch, facts());
        told?.();
      });
      this.watched.push({ kind, lasting: each, facts });
      return each;
    };
    const stale = (reading: 'voltage' | 'current', rows: number): Lasting => {
      const facts = (): Facts => ({ reading });
      const each = new Lasting(0, Math.max(STALE_TIME, rows * interval), (stretch) =>
        tell('stale_reading', stretch, facts()),
      );
      this.watched.push({ kind: 'stale_reading', lasting: each, facts });
      return each;
    };
    this.stall = lasting('stall', lossWindow, () => ({}));
    this.feed = lasting('feed_stop', Math.max(FEED_TIME, lossWindow), () => ({}));
    this.pressure = lasting(
      'low_air',
      AIR_TIME,
      () => ({ reading: 'air_pressure', value: this.lowAir, against: levels.airPressure }),
      () => {
        this.lowAir = Number.POSITIVE_INFINITY;
      },
    );
    this.flow = lasting(
      'low_air',
      AIR_TIME,
      () => ({ reading: 'air_flow', value: this.lowFlow, against: levels.airFlow }),
      () => {
        this.lowFlow = Number.POSITIVE_INFINITY;
      },
    );
    this.slip = new Lasting(0, 0, (stretch) => {
      const { wheel, rail } = this.slipSum;
      tell('slip', stretch, { value: wheel, against: rail });
    });
    this.staleVolts = stale('voltage', this.volts.staleRows);
    this.staleAmps = stale('current', this.amps.staleRows);
  }

  /** What fails at a moment and has for long enough to be told. */
  underWay(
    time: number,
  ): readonly { readonly kind: EventKind; readonly from: Mark; readonly facts: Facts }[] {
    return this.watched.flatMap(({ kind, lasting, facts }) => {
      const from = lasting.since(time);
      return from === undefined ? [] : [{ kind, from, facts: facts() }];
    });
  }

  /** The arc burns again: speeds are looked at from here on. */
  begin(mark: Mark): void {
    this.speedFrom = mark;
    this.slow = false;
  }

  /**
   * One row with the arc burning. `usual` is the travel that the pass is meant to run at, undefined where nothing tells it;
   * `settled` is whether the arc has burned for long enough to be judged.
   */
  row(pass: OpenPass, log: LogWay, usual: number | undefined, settled: boolean, now: Row): void {
    const { levels } = this;
    const { source } = log;
    const { time, row, volts, amps, speed, feed, air, flow } = now;
    const way = source === 'none' ? Number.NaN : log.s - pass.origin;
    if (usual !== undefined && source !== 'none' && source !== 'arc_time') {
      if (levels.travel === undefined) this.speedOfPosition(time, row, way, usual);
      else if (!Number.isNaN(speed)) this.slow = Math.abs(speed) < STALL_SHARE * levels.travel;
      const { slow } = this;
      if ((settled && slow) || this.stall.isOpen) this.stall.row(settled && slow, time, row, way);
    }
    if (levels.feed !== undefined && !Number.isNaN(feed)) {
      const stands = settled && feed < FEED_SHARE * levels.feed;
      if (stands || this.feed.isOpen) this.feed.row(stands, time, row, way);
    }
    if (levels.airPressure !== undefined && !Number.isNaN(air)) {
      const low = air < AIR_SHARE * levels.airPressure;
      if (low && air < this.lowAir) this.lowAir = air;
      if (low || this.pressure.isOpen) this.pressure.row(low, time, row, way);
    }
    if (levels.airFlow !== undefined && !Number.isNaN(flow)) {
      const low = flow < AIR_SHARE * levels.airFlow;
      if (low && flow < this.lowFlow) this.lowFlow = flow;
      if (low || this.flow.isOpen) this.flow.row(low, time, row, way);
    }
    if (!Number.isNaN(volts)) {
      const repeats = this.volts.repeats(volts);
      if (repeats || this.staleVolts.isOpen) this.staleVolts.row(repeats, time, row, way);
    }
    if (!Number.isNaN(amps)) {
      const repeats = this.amps.repeats(amps);
      if (repeats || this.staleAmps.isOpen) this.staleAmps.row(repeats, time, row, way);
    }
    if (source === 'position' && levels.travel !== undefined) this.compareWheel(pass, log, time, row);
  }

  /** The arc of a pass is out: what lasted ends there. */
  end({ time, row, way }: Mark): void {
    for (const lasting of [
      this.stall,
      this.feed,
      this.pressure,
      this.flow,
      this.slip,
      this.staleVolts,
      this.staleAmps,
    ])
      lasting.end(time, row, way);
    this.lowAir = Number.POSITIVE_INFINITY;
    this.lowFlow = Number.POSITIVE_INFINITY;
  }

  /** Whether the carriage stands, from the position alone. */
  private speedOfPosition(time: number, row: number, way: number, usual: number): void {
    const passed = time - this.speedFrom.time;
    if (passed < SPEED_TIME) return;
    this.slow = Math.abs(way - this.speedFrom.way) < STALL_SHARE * usual * passed;
    this.speedFrom = { time, row, way };
  }

  /** Holds what the wheel counted against what the position says, second by second. */
  private compareWheel(pass: OpenPass, log: LogWay, time: number, row: number): void {
    const from = this.slipFrom;
    const isFresh = from.row < pass.struck.row;
    if (!isFresh && time - from.time < SLIP_TIME) return;
    const now = { time, row, way: log.s, wheel: log.wheel };
    if (isFresh) {
      this.slipFrom = now;
      return;
    }
    const wheel = Math.abs(now.wheel - from.wheel);
    const rail = Math.abs(now.way - from.way);
    const parts = Math.abs(wheel - rail) > SLIP_WAY + SLIP_SHARE * Math.max(wheel, rail);
    if (parts) {
      if (!this.slip.isOpen) this.slipSum = { wheel: 0, rail: 0 };
      this.slipSum.wheel += wheel;
      this.slipSum.rail += rail;
      this.slip.row(true, from.time, from.row, from.way - pass.origin);
    } else this.slip.end(from.time, from.row, from.way - pass.origin);
    this.slipFrom = now;
  }
}
