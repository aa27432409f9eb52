import { predictWear } from '../removal/index.ts';
import { usableLength } from './effort.ts';
import type { ChangeOutcome, PassOutcome, TryoutOutcome } from './outcome.ts';
import type { ReportInput } from './report-input.ts';
import type { Feasible } from './weigh.ts';

/** Where along the seam each electrode runs out, at the median wear; a trial beside the seam has begun the first. */
export function electrodeChanges(
  { solved, task }: Feasible,
  passes: readonly PassOutcome[],
  tryout: TryoutOutcome | undefined,
  { belief, job }: ReportInput,
): ChangeOutcome[] {
  const { electrode, current } = solved.setup.rig;
  const runOut = (task.run.passLength - job.seam.length) / 2;
  const usable = usableLength(electrode);
  const wear = predictWear(belief, electrode.diameter, current).p50;
  const changes: ChangeOutcome[] = [];
  let left = usable;
  if (tryout?.kind === 'trial') left -= (tryout.length / tryout.travel) * wear;
  for (const pass of passes) {
    left -= wear * pass.dwell;
    let at = pass.from - runOut;
    const end = pass.to + runOut;
    // The place where what is left of the electrode is burnt.
    while (at + (Math.max(0, left) / wear) * pass.travel < end) {
      at += (Math.max(0, left) / wear) * pass.travel;
      changes.push({ pass: pass.number, at });
      left = usable;
    }
    left -= ((end - at) / pass.travel) * wear;
  }
  return changes;
}
