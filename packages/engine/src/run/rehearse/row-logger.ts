import type { Channel, LogBatch } from '../log-batch.ts';

/** What the rig does at an instant; SI. */
export interface LoggedRow {
  readonly volts: number;
  readonly amps: number;
  readonly speed: number;
  readonly feed: number;
  readonly air: number;
  /** True place on the rail [m]. */
  readonly place: number;
}

const BATCH = 4096;

/** Takes rows of the rehearsed rig as a logger does: instants or means, quantised, silent or stale when asked. */
export class RowLogger {
  private readonly interval: number;
  private readonly dt: number;
  private readonly averages: boolean;
  private readonly channels: readonly Channel[];
  private readonly perRow: number;
  private steps = 0;
  private rows = 0;
  private clock = 0;
  private sums = { volts: 0, amps: 0, speed: 0, feed: 0, air: 0 };
  private held: { volts: number; amps: number } | undefined;
  private time: number[] = [];
  private row: number[] = [];
  private values: Partial<Record<Channel, number[]>> = {};

  constructor(rate: number, dt: number, channels: readonly Channel[], averages: boolean) {
    this.interval = 1 / rate;
    this.dt = dt;
    this.channels = channels;
    this.averages = averages;
    this.perRow = Math.round(this.interval / dt);
  }

  stepClock(by: number): void {
    this.clock += by;
  }

  /** One step of the rig; a batch when one is full. */
  add(now: LoggedRow, silent: boolean, stale: boolean, spike: number | undefined): LogBatch | undefined {
    const { sums } = this;
    this.steps += 1;
    if (this.averages) {
      sums.volts += now.volts;
      sums.amps += now.amps;
      sums.speed += now.speed;
      sums.feed += now.feed;
      sums.air += now.air;
    }
    if (this.steps % this.perRow !== 0) return undefined;
    const mean = (sum: number, instant: number): number => (this.averages ? sum / this.perRow : instant);
    const reading = {
      volts: mean(sums.volts, now.volts),
      amps: mean(sums.amps, now.amps),
      speed: mean(sums.speed, now.speed),
      feed: mean(sums.feed, now.feed),
      air: mean(sums.air, now.air),
    };
    this.sums = { volts: 0, amps: 0, speed: 0, feed: 0, air: 0 };
    if (stale) this.held ??= { volts: reading.volts, amps: reading.amps };
    else this.held = undefined;
    const { volts, amps } = this.held ?? reading;
    const times = spike ?? 1;
    if (silent) return undefined;
    this.rows += 1;
    this.time.push(quantised((this.steps - this.perRow) * this.dt + this.clock, 1e-4));
    this.row.push(this.rows);
    const read: Record<Channel, number> = {
      voltage_V: quantised(volts, 0.01),
      current_A: quantised(amps * times, 0.1),
      travel_m_per_s: quantised(reading.speed, 1e-6),
      position_m: quantised(now.place, 1e-4),
      feed_m_per_s: quantised(reading.feed, 1e-7),
      air_pressure_Pa: quantised(reading.air, 100),
      air_flow_m3_per_s: Number.NaN,
    };
    for (const channel of this.channels) {
      this.values[channel] ??= [];
      this.values[channel].push(read[channel]);
    }
    return this.rows % BATCH === 0 ? this.take() : undefined;
  }

  *rest(): Generator<LogBatch, void> {
    if (this.time.length > 0) yield this.take();
  }

  private take(): LogBatch {
    const channels = Object.fromEntries(
      this.channels.map((channel) => [channel, Float64Array.from(this.values[channel] ?? [])]),
    );
    const batch = { time_s: Float64Array.from(this.time), row: Float64Array.from(this.row), channels };
    this.time = [];
    this.row = [];
    this.values = {};
    return batch;
  }
}

function quantised(value: number, step: number): number {
  return Math.round(value / step) * step;
}
