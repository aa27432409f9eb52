import { cpus, loadavg } from 'node:os';

/** Median time of one call, and how far its calls lie apart. */
export interface Timed {
  /** Median [s]. */
  readonly median: number;
  /** Distance of the quartiles over the median [-]. */
  readonly unrest: number;
}

/** Unrest from which a figure is not to be trusted [-]. */
const UNREST_MOST = 0.3;

/** Calls a few times to warm up, then so many times with the clock on. */
export function timed(calls: number, run: () => unknown): Timed {
  for (let warm = 0; warm < Math.max(2, Math.ceil(calls / 4)); warm += 1) run();
  const times = Array.from({ length: calls }, () => {
    const start = process.hrtime.bigint();
    run();
    return Number(process.hrtime.bigint() - start) / 1e9;
  }).sort((a, b) => a - b);
  const at = (share: number): number => times[Math.min(calls - 1, Math.floor(share * calls))]!;
  return { median: at(0.5), unrest: (at(0.75) - at(0.25)) / at(0.5) };
}

/** Says beside a figure that it moved too much to be trusted. */
export function unrestNote(...runs: readonly Timed[]): string {
  const most = Math.max(...runs.map((run) => run.unrest));
  return most > UNREST_MOST
    ? `   UNSTABLE: quartiles ${(most * 100).toFixed(0)} % of the median apart; run again on an idle machine`
    : '';
}

/** What the machine was doing meanwhile. */
export function machineLine(): string {
  return `Node ${process.version}, ${cpus().length} cores, load ${loadavg()[0]!.toFixed(1)}`;
}
