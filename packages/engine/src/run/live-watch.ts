import { type GivenReading, JsonLinesReader, type TableBatch } from '../delimited/index.ts';
import type { RunExpectation } from './expectation.ts';
import { LevelFinder, type LogLevels } from './levels.ts';
import { channelsOf, type LogBatch } from './log-batch.ts';
import type { Deviation } from './outcome.ts';
import { RunMachine } from './run-machine.ts';

/** Arc time after which a run is watched [s]: the plan tells its levels, the rows what the plan does not. */
const ARC_TIME = 1;

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
    }
  }

  /** What is otherwise than planned at the last reading. */
  deviations(): readonly Deviation[] {
    return this.#machine?.underWay() ?? [];
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

/** Rows as they came; undefined where they have no clock. */
function rowsOf({ columns, row }: TableBatch): LogBatch | undefined {
  const { time, date } = columns;
  if (time === undefined) return undefined;
  const time_s = date === undefined ? time : time.map((seconds, at) => seconds + date[at]!);
  const channels = Object.fromEntries(channelsOf(columns));
  return { time_s, row, channels };
}
