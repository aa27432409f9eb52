import type { Profiler } from 'node:inspector';
import { Session } from 'node:inspector/promises';

/**
 * Counts what calls do: how often each block of JavaScript is run, the libraries' too, summed over all blocks. The same
 * call gives the same count on any machine, so that growth can be held to a law without a clock.
 */
export class WorkCount {
  readonly #session = new Session();

  /** Begins to count; until `stop`, everything runs slower. */
  async start(): Promise<void> {
    this.#session.connect();
    await this.#session.post('Profiler.enable');
    await this.#session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
  }

  /** Blocks run by a call [-]. */
  async of(call: () => void): Promise<number> {
    await this.#session.post('Profiler.takePreciseCoverage');
    call();
    const { result } = await this.#session.post('Profiler.takePreciseCoverage');
    return result.reduce((sum, script) => sum + runsOf(script), 0);
  }

  async stop(): Promise<void> {
    await this.#session.post('Profiler.stopPreciseCoverage');
    this.#session.disconnect();
  }
}

function runsOf({ functions }: Profiler.ScriptCoverage): number {
  return functions.flatMap(({ ranges }) => ranges).reduce((sum, { count }) => sum + count, 0);
}
