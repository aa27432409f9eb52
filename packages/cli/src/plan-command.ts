import { PROGRAM_VERSION } from '@furrow/contract';
import { answerJob, type UnitSystem } from '@furrow/engine';
import { renderText } from '@furrow/papers';
import { EXIT } from './exit-code.ts';
import { loadJobWithKit } from './load-document.ts';
import type { Streams } from './streams.ts';

/** Options of `furrow plan`. */
export interface PlanOptions {
  readonly json: boolean;
  readonly units: UnitSystem;
  /** Kit file whose margins the plan keeps; none if left out. */
  readonly kit: string | undefined;
}

/** Plans a job file and prints the result for people or for programs. */
export async function planCommand(file: string, options: PlanOptions, streams: Streams): Promise<number> {
  const loaded = await loadJobWithKit(file, options.kit);
  if (!loaded.ok) {
    streams.problem(loaded.lines);
    return EXIT.badInput;
  }
  const { job, kit } = loaded.read;
  const answer = answerJob(job, PROGRAM_VERSION, kit, options.units);
  streams.print(options.json ? JSON.stringify(answer, null, 2) : renderText(answer, job, options.units));
  return answer.plan === undefined ? EXIT.refusal : EXIT.plan;
}
