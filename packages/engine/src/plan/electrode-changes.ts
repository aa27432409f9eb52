import { runOutLength } from '../groove/index.ts';
import { inUnit } from '../quantity/index.ts';
import { predictWear } from '../removal/index.ts';
import { usableLength } from './effort.ts';
import type { ReportInput } from './report-input.ts';
import type { ElectrodeChange, PlanPass } from './result.ts';
import type { Feasible } from './weigh.ts';

/** Where along the seam each electrode runs out, at the median wear. */
export function electrodeChanges(
  feasible: Feasible,
  passes: readonly PlanPass[],
  input: ReportInput,
): ElectrodeChange[] {
  const { setup } = feasible.solved;
  const length = feasible.task.run.passLength;
  const runOut = runOutLength(input.job.groove);
  const usable = usableLength(setup.electrode);
  const wear = predictWear(input.posterior, setup.electrode.diameter, setup.current).p50;
  const changes: ElectrodeChange[] = [];
  let left = usable;
  for (const pass of passes) {
    const travel = pass.travel_mm_per_min / 60_000;
    left -= wear * pass.dwell_s;
    let at = 0;
    // The place where what is left of the electrode is burnt.
    while (at + (Math.max(0, left) / wear) * travel < length) {
      at += (Math.max(0, left) / wear) * travel;
      changes.push({ pass: pass.number, at_mm: inUnit(at - runOut, 'mm') });
      left = usable;
    }
    left -= ((length - at) / travel) * wear;
  }
  return changes;
}
