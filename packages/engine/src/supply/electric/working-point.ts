import { bisect } from '../../numeric/index.ts';
import { behind, currentAt, lineOf } from './characteristic.ts';
import { HOTTEST } from './copper.ts';
import type { ElectricLoop } from './electric-loop.ts';
import { type Agreement, agreeOnCurrent, agreeOnVoltage, type JoinedSource } from './joined-sources.ts';
import { type LeadRun, runResistance } from './loop-runs.ts';
import { steadyTemperature } from './steady-temperature.ts';

/** Conductor temperature of each run, given the current that the run carries. */
export type RunTemperature = (run: number, current: number) => number;

/** Temperatures that do not ask for the current. */
export function fixedTemperatures(temperatures: readonly number[]): RunTemperature {
  return (run) => temperatures[run]!;
}

/** Where each run settles; the end of the law's range where it settles nowhere. */
export function steadyTemperatures(runs: readonly LeadRun[]): RunTemperature {
  return (index, current) => {
    const { lead, model } = runs[index]!;
    const steady = steadyTemperature(model, current / (lead.parallels ?? 1));
    return steady.kind === 'steady' ? steady.temperature_K : HOTTEST;
  };
}

/** Drop of a set of runs at a current that all of them carry [V]; it rises with the current. */
export function dropOf(
  runs: readonly LeadRun[],
  which: (run: LeadRun) => boolean,
  temperature: RunTemperature,
  current: number,
): number {
  return runs.reduce(
    (sum, run, i) => (which(run) ? sum + current * runResistance(run, temperature(i, current)) : sum),
    0,
  );
}

/**
 * Where sources and arc agree. Leads named in `sensed` lie inside what the arc's voltage is sensed across, so their
 * drop is part of the voltage held.
 */
export function workingPoint(
  loop: ElectricLoop,
  runs: readonly LeadRun[],
  temperature: RunTemperature,
  sensed: ReadonlySet<string> = new Set(),
): Agreement | undefined {
  const sources = loop.sources.map((_, branch) => joinedSource(loop, runs, temperature, branch));
  const { arc } = loop;
  if (arc.holds === 'current') return agreeOnCurrent(sources, arc.current);
  const outside = (run: LeadRun): boolean => run.branch === undefined && !sensed.has(run.lead.name);
  return agreeOnVoltage(sources, arc.voltage, (current) => dropOf(runs, outside, temperature, current));
}

/** A source behind its own leads. */
function joinedSource(
  loop: ElectricLoop,
  runs: readonly LeadRun[],
  temperature: RunTemperature,
  branch: number,
): JoinedSource {
  const line = lineOf(loop.sources[branch]!.source.characteristic);
  const noLoad = line.voltages[0]!;
  const own = (run: LeadRun): boolean => run.branch === branch;
  if (!runs.some(own)) return { noLoad, currentAt: (voltage) => currentAt(line, voltage), line };
  const most = line.currents.at(-1)!;
  const resistanceAt = (current: number): number => dropOf(runs, own, temperature, current) / current;
  const [cold, hot] = [resistanceAt(most * 1e-9), resistanceAt(most)];
  if (Math.abs(hot - cold) <= 1e-12 * hot) {
    const seen = behind(line, hot);
    return { noLoad, currentAt: (voltage) => currentAt(seen, voltage), line: seen };
  }
  return {
    noLoad,
    // Each current has its own resistance, which rises with it: the one current that fits its own line is sought.
    currentAt: (voltage) => {
      if (voltage >= noLoad) return 0;
      const excess = (current: number): number =>
        currentAt(behind(line, resistanceAt(Math.max(current, most * 1e-9))), voltage) - current;
      return bisect(excess, 0, most, 1e-10) ?? most;
    },
  };
}
