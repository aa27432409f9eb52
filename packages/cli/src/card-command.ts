import { PROGRAM_VERSION } from '@furrow/contract';
import { answerJob, type UnitSystem } from '@furrow/engine';
import { cardDocument, renderPdf } from '@furrow/papers';
import { EXIT } from './exit-code.ts';
import { loadJobWithKit } from './load-document.ts';
import { type Written, writeCard } from './output/card-file.ts';
import { whyUnwritable } from './output/disk.ts';
import type { Streams } from './streams.ts';

/** Options of `furrow card`. */
export interface CardOptions {
  readonly output: string;
  readonly units: UnitSystem;
  /** Kit file whose margins the plan keeps; none if left out. */
  readonly kit: string | undefined;
  readonly paper: 'a4' | 'letter';
}

/** Writes the set-up card of a job file as a PDF. */
export async function cardCommand(file: string, options: CardOptions, streams: Streams): Promise<number> {
  const loaded = await loadJobWithKit(file, options.kit);
  if (!loaded.ok) {
    streams.problem(loaded.lines);
    return EXIT.badInput;
  }
  const { job, kit } = loaded.read;
  const answer = answerJob(job, PROGRAM_VERSION, kit, options.units);
  const { units, paper } = options;
  const pdf = await renderPdf(cardDocument(job, answer, { units, paper }));
  let written: Written;
  try {
    written = writeCard(options.output, pdf);
  } catch (error) {
    const why = whyUnwritable(error);
    if (why === undefined) throw error;
    streams.problem([`${options.output}: the card could not be written: ${why}`]);
    return EXIT.badInput;
  }
  if (written === 'in_the_way') {
    streams.problem([
      `${options.output}: nothing was written. What lies there is no card, or was changed after Furrow wrote it: name another file, or move it away first.`,
    ]);
    return EXIT.badInput;
  }
  if (answer.plan === undefined) {
    streams.problem([`${options.output} says why there is no plan; it holds no setting to run.`]);
    return EXIT.refusal;
  }
  streams.print(`Wrote ${options.output}${written === 'new' ? '' : ', in place of an earlier card'}.`);
  return EXIT.plan;
}
