import { PROGRAM_VERSION } from '@furrow/contract';
import { answerJob, type UnitSystem } from '@furrow/engine';
import { renderSupplyText } from '@furrow/papers';
import { EXIT } from './exit-code.ts';
import { loadJobWithKit } from './load-document.ts';
import type { Streams } from './streams.ts';

/** Options of `furrow supply`. */
export interface SupplyOptions {
  readonly kit: string;
  readonly json: boolean;
  readonly units: UnitSystem;
}

/** Tells what a kit makes of a job's plan: margins, loop, air, place, connections and checks. */
export async function supplyCommand(file: string, options: SupplyOptions, streams: Streams): Promise<number> {
  const loaded = await loadJobWithKit(file, options.kit);
  if (!loaded.ok) {
    streams.problem(loaded.lines);
    return EXIT.badInput;
  }
  const { job, kit } = loaded.read;
  const answer = answerJob(job, PROGRAM_VERSION, kit, options.units);
  streams.print(
    options.json
      ? JSON.stringify(answer.supply, null, 2)
      : renderSupplyText(answer, job.job.title, options.units),
  );
  return answer.plan === undefined ? EXIT.refusal : EXIT.plan;
}
