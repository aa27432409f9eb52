import type { DutyInterval } from '../duty/index.ts';
import type { ElectricLoop } from './electric-loop.ts';
import type { Agreement } from './joined-sources.ts';
import { leadTemperatures, type TemperatureCourse } from './lead-temperature.ts';
import type { LeadRun } from './loop-runs.ts';
import { fixedTemperatures, workingPoint } from './working-point.ts';

/** Current of each run at an agreement [A]. */
export function runCurrents(runs: readonly LeadRun[], point: Agreement): number[] {
  return runs.map(({ branch }) => (branch === undefined ? point.current : point.currents[branch]!));
}

/**
 * The course of every run through a duty, from cold; the working point moves with the temperatures. `cold` is the
 * working point at ambient temperature.
 */
export function coursesOf(
  loop: ElectricLoop,
  runs: readonly LeadRun[],
  duty: readonly DutyInterval[],
  cold: Agreement,
  sensed: ReadonlySet<string> = new Set(),
): readonly TemperatureCourse[] {
  const each = (point: Agreement): number[] =>
    runCurrents(runs, point).map((current, i) => current / (runs[i]!.lead.parallels ?? 1));
  const same = each(cold);
  // A held current that every lead carries whole does not depend on how warm the leads are.
  const settled = loop.arc.holds === 'current' && runs.every((run) => run.branch === undefined);
  const currentsAt = (temperatures: readonly number[]): readonly number[] => {
    const point = workingPoint(loop, runs, fixedTemperatures(temperatures), sensed);
    return point ? each(point) : same;
  };
  return leadTemperatures(
    runs.map((run) => run.model),
    settled ? () => same : currentsAt,
    duty,
  );
}
