import { percentiles } from '../numeric/index.ts';
import type { RunExpectation } from './expectation.ts';
import type { Channel, LogBatch } from './log-batch.ts';

/** What a log's own rows say it looks like with the arc burning; undefined where the log has no such reading. */
export interface LogLevels {
  /** Usual time between two rows [s]. */
  readonly interval: number;
  /** Current with the arc burning [A]. */
  readonly current: number | undefined;
  /** Voltage of the arc [V]. */
  readonly voltage: number | undefined;
  /** Voltage with no current flowing, where it was seen [V]. */
  readonly noLoad: number | undefined;
  readonly travel: number | undefined;
  readonly feed: number | undefined;
  readonly airPressure: number | undefined;
  readonly airFlow: number | undefined;
  /** Share of rows whose voltage is that of the row before [-]. */
  readonly voltageRepeats: number;
  readonly currentRepeats: number;
}

/** Arc rows that give levels [-], and arc time [s]: enough for a median that one bad start does not move. */
const ARC_ROWS = 20;
const ARC_TIME = 10;
/** Rows looked through at most before what there is must do [-]. */
const ROWS_MOST = 400_000;
/** Least current of a gouging arc, and its least and greatest voltage where nothing else is known: judgement, no source. */
const CURRENT_LEAST = 30;
const VOLTAGE_LEAST = 18;
const VOLTAGE_MOST = 60;
/** Values of which a median is taken at most [-]. */
const SAMPLE_MOST = 20_000;

/**
 * Collects the first rows of a log until they tell what its arc looks like. How the rows are cut into batches makes no
 * difference.
 */
export class LevelFinder {
  private readonly expected: RunExpectation | undefined;
  private readonly kept: LogBatch[] = [];
  private rows = 0;
  private arcTime = 0;
  private last = { time: Number.NaN, volts: Number.NaN, amps: Number.NaN };
  private readonly steps: number[] = [];
  private readonly idle: number[] = [];
  private readonly arc = new Map<Channel, number[]>();
  private arcRows = 0;
  private repeats = { volts: 0, amps: 0 };

  private readonly arcTimeLeast: number;

  constructor(expected: RunExpectation | undefined, arcTimeLeast = ARC_TIME) {
    this.expected = expected;
    this.arcTimeLeast = arcTimeLeast;
  }

  /** Takes a batch; whether the rows so far are enough. The batch must not be changed afterwards. */
  take(batch: LogBatch): boolean {
    this.kept.push(batch);
    for (let i = 0; i < batch.time_s.length && !this.isEnough(); i += 1) this.look(batch, i);
    return this.isEnough();
  }

  /** The batches taken so far, which are let go. */
  release(): LogBatch[] {
    this.rows = 0;
    return this.kept.splice(0);
  }

  /** Whether what was seen holds an arc. */
  get sawArc(): boolean {
    return this.arcRows > 0;
  }

  levels(): LogLevels {
    const of = (channel: Channel): number[] => this.arc.get(channel) ?? [];
    const voltage = median(of('voltage_V').filter((volts) => volts > VOLTAGE_LEAST));
    const share = (count: number): number => (this.arcRows === 0 ? 0 : count / this.arcRows);
    return {
      interval: median(this.steps) ?? 0.1,
      current: median(of('current_A')),
      voltage,
      noLoad: median(this.idle.filter((volts) => volts > 1.15 * (voltage ?? VOLTAGE_LEAST))),
      travel: median(
        of('travel_m_per_s')
          .map(Math.abs)
          .filter((speed) => speed > 0),
      ),
      feed: median(of('feed_m_per_s').filter((speed) => speed > 0)),
      airPressure: median(of('air_pressure_Pa')),
      airFlow: median(of('air_flow_m3_per_s')),
      voltageRepeats: share(this.repeats.volts),
      currentRepeats: share(this.repeats.amps),
    };
  }

  private isEnough(): boolean {
    return (this.arcRows >= ARC_ROWS && this.arcTime >= this.arcTimeLeast) || this.rows >= ROWS_MOST;
  }

  private look(batch: LogBatch, i: number): void {
    const { channels } = batch;
    const time = batch.time_s[i]!;
    const volts = channels.voltage_V?.[i] ?? Number.NaN;
    const amps = channels.current_A?.[i] ?? Number.NaN;
    const step = time - this.last.time;
    this.rows += 1;
    if (step > 0 && this.steps.length < SAMPLE_MOST) this.steps.push(step);
    if (this.isArc(volts, amps, channels.current_A !== undefined)) {
      this.arcRows += 1;
      this.arcTime += step > 0 ? Math.min(1, step) : 0;
      if (volts === this.last.volts) this.repeats.volts += 1;
      if (amps === this.last.amps) this.repeats.amps += 1;
      for (const [name, list] of Object.entries(channels)) this.keep(name as Channel, list[i]!);
    } else if (!(amps >= CURRENT_LEAST) && volts > VOLTAGE_LEAST && this.idle.length < SAMPLE_MOST)
      this.idle.push(volts);
    this.last = { time, volts, amps };
  }

  private keep(channel: Channel, value: number): void {
    if (!Number.isFinite(value)) return;
    const list = this.arc.get(channel) ?? [];
    if (list.length === 0) this.arc.set(channel, list);
    list.push(value);
  }

  /** Whether a row is likely one of the arc, told by what any arc has in common. */
  private isArc(volts: number, amps: number, hasCurrent: boolean): boolean {
    const set = this.expected?.voltage;
    const least = set === undefined ? VOLTAGE_LEAST : 0.5 * set;
    const most = set === undefined ? VOLTAGE_MOST : 1.35 * set;
    return hasCurrent ? amps > CURRENT_LEAST && !(volts <= least) : volts > least && volts < most;
  }
}

function median(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : percentiles(Float64Array.from(values), [0.5])[0]!;
}
