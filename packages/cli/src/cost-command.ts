import { PROGRAM_VERSION } from '@furrow/contract';
import { answerCost, answerJob, coolingForCost, tryCostChanges, type UnitSystem } from '@furrow/engine';
import { renderCostText } from '@furrow/papers';
import { EXIT } from './exit-code.ts';
import { loadJobWithKit } from './load-document.ts';
import type { Streams } from './streams.ts';

/** Options of `furrow cost`. */
export interface CostCommandOptions {
  readonly json: boolean;
  readonly units: UnitSystem;
  /** Kit file whose margins the plan keeps; none if left out. */
  readonly kit: string | undefined;
}

/** Tells time and money of the whole job, and what changes of job or kit would do to them. */
export async function costCommand(
  file: string,
  options: CostCommandOptions,
  streams: Streams,
): Promise<number> {
  const loaded = await loadJobWithKit(file, options.kit);
  if (!loaded.ok) {
    streams.problem(loaded.lines);
    return EXIT.badInput;
  }
  const { job, kit } = loaded.read;
  const answer = answerJob(job, PROGRAM_VERSION, kit, options.units);
  const waits = coolingForCost(job, answer);
  const cost = answerCost(job, answer, waits);
  const changes = cost.kind === 'no_plan' ? [] : [...tryCostChanges(job, cost, PROGRAM_VERSION, kit, waits)];
  streams.print(
    options.json
      ? JSON.stringify({ inputs: answer.inputs, cost, changes }, null, 2)
      : renderCostText(cost, changes, job.job.title, options.units),
  );
  return cost.kind === 'no_plan' ? EXIT.refusal : EXIT.plan;
}
