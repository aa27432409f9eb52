import type { StepSeen } from './march.ts';

/** State of a cell within a step, by the cubic that meets states and rates at both ends [J/m3]. */
export function stateWithin(step: StepSeen, cell: number, time: number): number {
  const length = step.to - step.from;
  const s = (time - step.from) / length;
  const before = step.now[cell]!;
  const rise = step.next[cell]! - before;
  const start = step.rate[cell]! * length;
  const end = step.nextRate[cell]! * length;
  return before + s * (start + s * (3 * rise - 2 * start - end + s * (start + end - 2 * rise)));
}

/** Time at which a cell falls through a level within a step, if it does [s]. */
export function fallThrough(step: StepSeen, cell: number, level: number): number | undefined {
  if (!(step.now[cell]! > level && step.next[cell]! <= level)) return undefined;
  let low = step.from;
  let high = step.to;
  for (let round = 0; round < 40; round += 1) {
    const middle = (low + high) / 2;
    if (stateWithin(step, cell, middle) > level) low = middle;
    else high = middle;
  }
  return high;
}
