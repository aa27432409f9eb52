import type { FaultModel } from './model.ts';
import { chanceUnder, priorOf } from './outcome-chance.ts';
import type { Seen } from './read-evidence.ts';

/**
 * Probability of each cause after what was seen: one cause at a time, observables independent under it.
 * Worked in logarithms and scaled by the largest, so that no evidence, however contradictory, underflows.
 */
export function posteriorOf(model: FaultModel, seen: readonly Seen[]): number[] {
  const prior = priorOf(model.causes);
  const logs = model.causes.map((cause, index) =>
    seen.reduce(
      (sum, { observable, outcome }) => sum + Math.log(chanceUnder(cause, observable, outcome)),
      Math.log(prior[index]!),
    ),
  );
  const largest = Math.max(...logs);
  const shares = logs.map((log) => Math.exp(log - largest));
  const total = shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share) => share / total);
}
