import { PROGRAM_VERSION } from '@furrow/contract';
import { answerHazard, answerJob, type UnitSystem } from '@furrow/engine';
import { renderHazardText } from '@furrow/papers';
import { EXIT } from './exit-code.ts';
import { loadJobWithKit } from './load-document.ts';
import type { Streams } from './streams.ts';

/** Options of `furrow hazards`. */
export interface HazardsOptions {
  readonly kit: string | undefined;
  readonly json: boolean;
  readonly units: UnitSystem;
}

/** Tells what a job asks of the people around it; told too where there is no plan. */
export async function hazardsCommand(
  file: string,
  options: HazardsOptions,
  streams: Streams,
): Promise<number> {
  const loaded = await loadJobWithKit(file, options.kit);
  if (!loaded.ok) {
    streams.problem(loaded.lines);
    return EXIT.badInput;
  }
  const { job, kit } = loaded.read;
  const answer = answerJob(job, PROGRAM_VERSION, kit, options.units);
  const report = answerHazard(job, answer, kit);
  streams.print(
    options.json
      ? JSON.stringify({ inputs: answer.inputs, hazard: report }, null, 2)
      : renderHazardText(report, job.job.title, options.units),
  );
  return answer.plan === undefined ? EXIT.refusal : EXIT.plan;
}
