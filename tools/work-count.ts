import { type Profiler, Session } from 'node:inspector';

/**
 * Counts what calls do: how often each block of JavaScript is run, the libraries' too, summed over all blocks. The same
 * call gives the same count on any machine, so that growth can be held to a law without a clock.
 */
export class WorkCount {
  readonly #session = new Session();

  /** Begins to count; until `stop`, everything runs slower. */
  start(): void {
    this.#session.connect();
    this.#session.post('Profiler.enable');
    this.#session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
  }

  /** Blocks run by a call [-]. */
  of(call: () => void): number {
    this.#take();
    call();
    return this.#take();
  }

  stop(): void {
    this.#session.post('Profiler.stopPreciseCoverage');
    this.#session.disconnect();
  }

  /** Blocks run since it was asked last. A session of one's own process answers before `post` returns, so nothing else runs meanwhile. */
  #take(): number {
    let runs = Number.NaN;
    this.#session.post('Profiler.takePreciseCoverage', (error, { result }) => {
      if (error !== null) throw error;
      runs = result.reduce((sum, script) => sum + runsOf(script), 0);
    });
    return runs;
  }
}

function runsOf({ functions }: Profiler.ScriptCoverage): number {
  return functions.flatMap(({ ranges }) => ranges).reduce((sum, { count }) => sum + count, 0);
}
