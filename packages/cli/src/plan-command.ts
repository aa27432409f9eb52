import { PROGRAM_VERSION } from '@furrow/contract';
import { answerJob, type UnitSystem } from '@furrow/engine';
import { renderText } from '@furrow/papers';
import { EXIT } from './exit-code.ts';
import { loadJob } from './load-job.ts';
import type { Streams } from './streams.ts';

/** Options of `furrow plan`. */
export interface PlanOptions {
  readonly json: boolean;
  readonly units: UnitSystem;
}

/** Plans a job file and prints the result for people or for programs. */
export async function planCommand(file: string, options: PlanOptions, streams: Streams): Promise<number> {
  const loaded = await loadJob(file);
  if (!loaded.ok) {
    streams.problem(loaded.lines);
    return EXIT.badInput;
  }
  const answer = answerJob(loaded.read, PROGRAM_VERSION);
  streams.print(
    options.json ? JSON.stringify(answer, null, 2) : renderText(answer, loaded.read, options.units),
  );
  return answer.plan === undefined ? EXIT.refusal : EXIT.plan;
}
