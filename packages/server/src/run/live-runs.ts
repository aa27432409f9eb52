import { createReadStream, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { open, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { LiveState } from '@furrow/contract';
import { type Deviation, inUnit, type LiveWatch, REHEARSAL_MARK } from '@furrow/engine';
import {
  type Journal,
  JournalFailure,
  type Originals,
  openJournal,
  type Store,
  type StoredRun,
  StoreFailure,
} from '@furrow/store';
import { Refused } from '../guard/refused.ts';
import { Intake, modbusSource, mqttSource, type Source } from '../intake/index.ts';
import { type TakenLines, takeLines } from '../intake/take-lines.ts';
import type { Work } from '../work/open-work.ts';
import { brokerUrl, liveSourceOf } from './live-source.ts';
import { playRig } from './play-rig.ts';
import { watchOf } from './watch-of.ts';

/** How it is noted that nothing deviates or did. */
const NOTHING_DEVIATES = '0,';

/** A run whose readings come in. */
export class LiveRun {
  readonly id: string;
  readonly #journal: Journal;
  readonly #intake: Intake;
  readonly #waiting = new Set<() => void>();
  #source: Source | undefined;
  #says = 'waiting for readings';
  #trouble: string | undefined;
  #ended = false;
  #watch: LiveWatch | undefined;
  #watchedTo = 0;
  #watching: Promise<void> | undefined;
  /** What deviates from the plan, by kind, and what last did. */
  #deviating = NOTHING_DEVIATES;
  #turns = 0;

  constructor(id: string, journal: Journal, now: () => Date) {
    this.id = id;
    this.#journal = journal;
    this.#intake = new Intake(journal, now, () => {
      this.#trouble = undefined;
      this.#wake();
      this.#readOn();
    });
  }

  /** How often the run began or ceased to deviate from its plan [-]. */
  get turns(): number {
    return this.#turns;
  }

  /** Has everything that came in, and that comes, watched for deviations from the plan. */
  watchBy(watch: LiveWatch): void {
    this.#watch = watch;
    this.#readOn();
  }

  /** Bytes of readings that are on disk [bytes]. */
  get length(): number {
    return this.#journal.length;
  }

  get ended(): boolean {
    return this.#ended;
  }

  get path(): string {
    return this.#journal.path;
  }

  /** Takes newline JSON; done when all of it is on disk. A full disk is a `JournalFailure`. */
  async take(pieces: AsyncIterable<Uint8Array>): Promise<TakenLines> {
    try {
      return await takeLines(pieces, this.#intake);
    } catch (error) {
      if (error instanceof JournalFailure) this.#troubled(error.message);
      throw error;
    }
  }

  /** Has readings come in from a source. */
  async listenTo(begin: (intake: Intake, tell: (what: string) => void) => Promise<Source>): Promise<void> {
    const source = await begin(this.#intake, (what) => {
      this.#says = what;
      this.#wake();
    });
    if (this.#ended) await source.close();
    else this.#source = source;
  }

  /** What is told beside the readings, at a moment [ms since 1970]. */
  state(at: number): LiveState {
    const { frames, readings, refused, lastRefusal, lastAt } = this.#intake.count;
    return {
      frames,
      readings,
      refused,
      last_refusal: lastRefusal ?? null,
      age_ms: lastAt === undefined ? null : Math.max(0, at - lastAt),
      says: this.#says,
      trouble: this.#trouble ?? null,
      deviations: (this.#watch?.deviations() ?? []).map(stateDeviation),
      over: (this.#watch?.over() ?? []).map(stateDeviation),
    };
  }

  /** Whole lines from a place in the file on, some of them; empty when there are none yet. */
  async linesFrom(at: number): Promise<Buffer> {
    const length = Math.min(PIECE, this.length - at);
    if (length <= 0) return Buffer.alloc(0);
    const file = await open(this.path, 'r');
    try {
      const bytes = Buffer.alloc(length);
      const { bytesRead } = await file.read(bytes, 0, length, at);
      return bytes.subarray(0, bytes.lastIndexOf(LF, bytesRead - 1) + 1);
    } finally {
      await file.close();
    }
  }

  /** Done when something came in, or when the time is over [ms]. */
  changed(milliseconds: number): Promise<void> {
    return new Promise((resolve) => {
      const done = (): void => {
        clearTimeout(timer);
        this.#waiting.delete(done);
        resolve();
      };
      const timer = setTimeout(done, milliseconds);
      this.#waiting.add(done);
    });
  }

  /** Takes no more; done when everything that came is on disk. */
  async close(): Promise<void> {
    if (this.#ended) return;
    this.#ended = true;
    await this.#source?.close();
    await this.#watching;
    await this.#journal.close();
    this.#wake();
  }

  /** Hands what is on disk to the watch, one piece after the other. */
  #readOn(): void {
    if (this.#watch === undefined || this.#watching !== undefined) return;
    this.#watching = this.#watchOn(this.#watch).finally(() => {
      this.#watching = undefined;
    });
  }

  async #watchOn(watch: LiveWatch): Promise<void> {
    while (!this.#ended && this.#watchedTo < this.length) {
      const lines = await this.linesFrom(this.#watchedTo);
      if (lines.length === 0) return;
      this.#watchedTo += lines.length;
      watch.push(lines);
      const over = watch.over();
      const deviating = [
        ...watch.deviations().map(({ kind }) => kind),
        over.length,
        over.at(-1)?.since ?? '',
      ].join();
      if (deviating === this.#deviating) continue;
      this.#deviating = deviating;
      this.#turns += 1;
      this.#wake();
    }
  }

  #troubled(message: string): void {
    this.#trouble = message;
    this.#wake();
  }

  #wake(): void {
    for (const done of [...this.#waiting]) done();
  }
}

/** A deviation as it is told. */
function stateDeviation({ kind, since, duration, at, says }: Deviation): LiveState['deviations'][number] {
  return {
    kind,
    since_s: inUnit(since, 's'),
    duration_s: inUnit(duration, 's'),
    at_mm: at === undefined ? null : inUnit(at, 'mm'),
    says,
  };
}

/** Readings that a journal holds of a rig that is played [-]. */
async function readingsOf({ path }: Journal): Promise<number> {
  let readings = 0;
  for await (const line of createInterface({ input: createReadStream(path) })) {
    const times = JSON.parse(line)['time [s]'] as unknown;
    if (Array.isArray(times)) readings += times.length;
  }
  return readings;
}

/** Most of what is sent at once [bytes]: more than the longest line. */
const PIECE = 512 * 1024;
const LF = 10;
/** After a database that could not be reached [ms]. */
const TRY_AGAIN = 10_000;

/** What gathering the readings of live runs needs. */
export interface LiveParts {
  readonly store: Store;
  readonly originals: Originals;
  readonly work: Work;
  readonly log: (message: string) => void;
  readonly now: () => Date;
  /** Is told of a run that has its file. */
  readonly ended: () => void;
}

/** The runs that are under way here: each in a file of its own, to which readings are added as they come. */
export class LiveRuns {
  readonly #parts: LiveParts;
  readonly #folder: string;
  readonly #runs = new Map<string, LiveRun>();
  #again: NodeJS.Timeout | undefined;

  constructor(parts: LiveParts) {
    this.#parts = parts;
    this.#folder = join(parts.originals.folder, 'live');
    mkdirSync(this.#folder, { recursive: true, mode: 0o700 });
  }

  /** Live runs that are gathered here [-]. */
  get count(): number {
    return this.#runs.size;
  }

  get(id: string): LiveRun | undefined {
    return this.#runs.get(id);
  }

  /**
   * Gathers on with every run that was under way when the program ended; where the database cannot be reached, as soon as
   * it can. One that another program gathers has its file elsewhere.
   */
  async resume(): Promise<void> {
    if (readdirSync(this.#folder).length === 0) return;
    try {
      for (const run of await this.#parts.store.runs.live())
        if (existsSync(this.#pathOf(run.id))) await this.#goOn(run);
    } catch (error) {
      if (!(error instanceof StoreFailure)) throw error;
      this.#again = setTimeout(() => void this.resume(), TRY_AGAIN);
      this.#again.unref();
    }
  }

  /** Begins to gather, or gathers on. */
  async begin(run: StoredRun): Promise<LiveRun> {
    const known = this.#runs.get(run.id);
    if (known !== undefined) return known;
    const journal = await openJournal(this.#pathOf(run.id));
    if (run.rehearsal && journal.length === 0)
      await journal.add(
        Buffer.from(`{"note":"${REHEARSAL_MARK}: these readings were made up, no rig was run"}\n`),
      );
    const live = new LiveRun(run.id, journal, this.#parts.now);
    this.#runs.set(run.id, live);
    const source = liveSourceOf(run.source);
    switch (source.kind) {
      case 'http':
        break;
      case 'mqtt': {
        const { topic, client_id: clientId = `furrow-${run.id}` } = source;
        const url = brokerUrl(source, process.env);
        await live.listenTo((intake, tell) => mqttSource(intake, { url, topic, clientId }, tell));
        break;
      }
      case 'modbus': {
        const { interval_ms: interval, ...place } = source;
        await live.listenTo((intake, tell) => modbusSource(intake, { ...place, interval }, tell));
        break;
      }
      case 'rehearsal': {
        const { store, work } = this.#parts;
        const given = await readingsOf(journal);
        await live.listenTo((intake, tell) => playRig(intake, { store, work, run, source, given }, tell));
        break;
      }
    }
    void this.#watch(live, run);
    return live;
  }

  /** Watches a run against its plan; planning takes a while, and readings do not wait for it. */
  async #watch(live: LiveRun, run: StoredRun): Promise<void> {
    try {
      const watch = await watchOf(run, this.#parts);
      if (watch !== undefined) live.watchBy(watch);
    } catch (error) {
      if (live.ended || error instanceof StoreFailure || error instanceof Refused) return;
      this.#parts.log(
        `The live run ${run.id} is not watched: ${error instanceof Error ? error.message : error}`,
      );
    }
  }

  /** Ends a live run, as written down by whoever ends it: its file goes among the originals; undefined where none is gathered here. */
  async end(id: string, runs = this.#parts.store.runs): Promise<StoredRun | undefined> {
    const live = this.#runs.get(id);
    if (live === undefined) return undefined;
    const { originals, ended } = this.#parts;
    await live.close();
    const original = await originals.put(createReadStream(live.path));
    const run = await runs.end(id, original);
    // the readings stay where they came in until they are known to be kept
    if (run !== undefined) await this.#forget(live);
    ended();
    return run;
  }

  /** Gives up a live run that is erased, with all that came in. */
  async erase(id: string): Promise<void> {
    const live = this.#runs.get(id);
    if (live === undefined) return;
    await live.close();
    await this.#forget(live);
  }

  /** Takes no more; the runs go on when the program is started again. */
  async close(): Promise<void> {
    clearTimeout(this.#again);
    await Promise.all([...this.#runs.values()].map((live) => live.close()));
  }

  async #goOn(run: StoredRun): Promise<void> {
    try {
      await this.begin(run);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      this.#parts.log(`The live run ${run.id} cannot go on: ${why}`);
    }
  }

  async #forget(live: LiveRun): Promise<void> {
    this.#runs.delete(live.id);
    await rm(live.path, { force: true });
  }

  #pathOf(id: string): string {
    return join(this.#folder, `${id}.jsonl`);
  }
}
