import type { Journal } from '@furrow/store';
import { frameOf } from './frame.ts';

/** What has come in so far. */
export interface IntakeCount {
  /** Frames on disk [-]. */
  readonly frames: number;
  /** Readings on disk [-]. */
  readonly readings: number;
  /** Frames that were not taken [-]. */
  readonly refused: number;
  /** Why the last of them was not taken; undefined where all were. */
  readonly lastRefusal: string | undefined;
  /** When the last reading was on disk [ms since 1970]; undefined where there is none. */
  readonly lastAt: number | undefined;
}

/** Takes frames of readings from whatever brings them, and acknowledges each when it is on disk. */
export class Intake {
  readonly #journal: Journal;
  readonly #now: () => Date;
  readonly #kept: () => void;
  #frames = 0;
  #readings = 0;
  #refused = 0;
  #lastRefusal: string | undefined;
  #lastAt: number | undefined;

  /**
   * @param journal - where frames go
   * @param now - when they come
   * @param kept - is told after each that is on disk
   */
  constructor(journal: Journal, now: () => Date, kept: () => void = () => undefined) {
    this.#journal = journal;
    this.#now = now;
    this.#kept = kept;
  }

  get count(): IntakeCount {
    return {
      frames: this.#frames,
      readings: this.#readings,
      refused: this.#refused,
      lastRefusal: this.#lastRefusal,
      lastAt: this.#lastAt,
    };
  }

  /** Takes a frame; undefined when it is on disk, else why it is not taken. A full disk is a `JournalFailure`. */
  async take(bytes: Uint8Array): Promise<string | undefined> {
    const frame = frameOf(bytes, this.#now());
    if (!frame.ok) return this.refuse(frame.why);
    await this.#journal.add(frame.line);
    this.#frames += 1;
    this.#readings += frame.readings;
    this.#lastAt = this.#now().getTime();
    this.#kept();
    return undefined;
  }

  /** Counts what is not taken. */
  refuse(why: string): string {
    this.#refused += 1;
    this.#lastRefusal = why;
    return why;
  }
}
