import { type GivenReading, JsonLinesReader, type TableBatch } from '../delimited/index.ts';
import type { RunExpectation } from './expectation.ts';
import { LevelFinder, type LogLevels } from './levels.ts';
import { channelsOf, type LogBatch } from './log-batch.ts';
import type { Deviation, EventKind } from './outcome.ts';
import { RunMachine } from './run-machine.ts';

/** Arc time after which a run is watched [s]: the plan tells its levels, the rows what the plan does not. */
const ARC_TIME = 1;

/** Deviations that are over told at most [-]: a review of all that came tells the rest. */
const OVER_MOST = 10;
/** Events that belong to every start, and are no deviation. */
const OF_A_START: ReadonlySet<EventKind> = new Set(['touch_down', 'restart_short']);
/** Deviations that are told as events only when their pass is over. */
const DRIFTS: ReadonlySet<EventKind> = new Set(['voltage_drift', 'current_drift']);

/**
 * Watches the readings of a run as they come, for what is otherwise than planned at the moment. The review of all that
 * came judges afterwards; the watch mends no clock and waits for no row behind.
 *
 * @example
 * new LiveWatch({ length: 1, girth: false, lossWindow: 0.4, current: 450, voltage: 40, voltageLeast: 38, voltageMost: 42, electrode: 0.3, wear: 1e-6, passes: [] }).deviations() // => []
 */
export class LiveWatch {
  readonly #expected: RunExpectation;
  readonly #reader: JsonLinesReader;
  readonly #finder: LevelFinder;
  #machine: RunMachine | undefined;
  /** Drifts under way at the last reading, and those that came to their end. */
  #drifts: readonly Deviation[] = [];
  readonly #driftsOver: Deviation[] = [];

  /**
   * @param expected - what the plan leads one to expect [record], from `expectationOf`
   * @param given - what a person says of how the readings are named [record], any part
   */
  constructor(expected: RunExpectation, given: GivenReading = {}) {
    this.#expected = expected;
    this.#reader = new JsonLinesReader(given, { eager: true });
    this.#finder = new LevelFinder(expected, ARC_TIME);
  }

  /** Takes frames of readings as they are on disk, newline JSON. */
  push(lines: Uint8Array): void {
    for (const batch of this.#reader.push(lines)) {
      const rows = rowsOf(batch);
      if (rows === undefined) continue;
      if (this.#machine !== undefined) this.#machine.advance(rows);
      else if (this.#finder.take(rows)) {
        this.#machine = new RunMachine(this.#expected, this.#levels());
        for (const early of this.#finder.release()) this.#machine.advance(early);
      }
      this.#followDrifts();
    }
  }

  /** What is otherwise than planned at the last reading. */
  deviations(): readonly Deviation[] {
    return this.#machine?.underWay() ?? [];
  }

  /** The last deviations that are over, oldest first. */
  over(): readonly Deviation[] {
    const events = (this.#machine?.overSoFar(2 * OVER_MOST) ?? []).filter(
      ({ kind }) => !OF_A_START.has(kind),
    );
    // the event that a drift became tells it better
    const drifts = this.#driftsOver.filter(
      (drift) => !events.some((event) => event.kind === drift.kind && overlaps(event, drift)),
    );
    return [...events, ...drifts].sort((a, b) => a.since - b.since).slice(-OVER_MOST);
  }

  #followDrifts(): void {
    const now = this.deviations().filter(({ kind }) => DRIFTS.has(kind));
    for (const drift of this.#drifts) {
      if (now.some(({ kind, since }) => kind === drift.kind && since === drift.since)) continue;
      this.#driftsOver.push(drift);
      if (this.#driftsOver.length > OVER_MOST) this.#driftsOver.shift();
    }
    this.#drifts = now;
  }

  #levels(): LogLevels {
    const { current, voltage } = this.#expected;
    const seen = this.#finder.levels();
    return {
      ...seen,
      current: seen.current === undefined ? undefined : current,
      voltage: seen.voltage === undefined ? undefined : voltage,
      travel: seen.travel === undefined ? undefined : (this.#expected.passes[0]?.travel ?? seen.travel),
    };
  }
}

function overlaps(a: Deviation, b: Deviation): boolean {
  return a.since <= b.since + b.duration && b.since <= a.since + a.duration;
}

/** Rows as they came; undefined where they have no clock. */
function rowsOf({ columns, row }: TableBatch): LogBatch | undefined {
  const { time, date } = columns;
  if (time === undefined) return undefined;
  const time_s = date === undefined ? time : time.map((seconds, at) => seconds + date[at]!);
  const channels = Object.fromEntries(channelsOf(columns));
  return { time_s, row, channels };
}
