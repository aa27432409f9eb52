import type { Candidate } from '../limit/index.ts';
import type { Solved, SolveTask } from './solve.ts';

/** Every ln specific energy that a set-up may be run at, the greatest (deepest, slowest) first. */
export function energiesOf(solved: Solved): number[] {
  const all = solved.setup.layers.flatMap((rule) =>
    rule.kind === 'set' ? [rule.logEnergy] : rule.table.logEnergy.filter((value) => !Number.isNaN(value)),
  );
  const sorted = [...new Set(all)].sort((a, b) => b - a);
  return sorted.length <= 2 ? sorted : [sorted[0]!, sorted.at(-1)!];
}

/** A pass of a set-up as the limit functions see it. */
export function candidateOf(task: SolveTask, solved: Solved, logEnergy: number, width: number): Candidate {
  const { base } = task;
  const [level, slope, angle] = task.belief.mean as [number, number, number];
  return {
    electrode: base.electrode,
    current: base.current,
    voltage: base.voltage,
    pushAngle: Math.PI / 4 + (base.angleTerm * Math.PI) / 12,
    travel: base.unitTravel * Math.exp(-logEnergy),
    tracks: task.pattern.tracks,
    layers: solved.setup.layers.length,
    passLength: task.run.passLength,
    passDepth: base.electrode.diameter * Math.exp(level + slope * logEnergy + angle * base.angleTerm),
    passWidth: width,
  };
}
