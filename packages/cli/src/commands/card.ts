import { cardDocument, renderPdf } from '@furrow/papers';
import { badInput } from '../frame/command.ts';
import { EXIT } from '../frame/exit-code.ts';
import { type JobOptions, onJob } from '../frame/on-job.ts';
import { type Written, writeCard } from '../output/card-file.ts';
import { whyUnwritable } from '../output/disk.ts';

interface CardOptions extends JobOptions {
  readonly output: string;
  readonly paper: 'a4' | 'letter';
}

/** Writes the set-up card of a job file as a PDF. */
export const run = onJob<CardOptions>(async ({ job }, answer, { output, units, paper }) => {
  const pdf = await renderPdf(cardDocument(job, answer, { units, paper }));
  let written: Written;
  try {
    written = writeCard(output, pdf);
  } catch (error) {
    const why = whyUnwritable(error);
    if (why === undefined) throw error;
    return badInput([`${output}: the card could not be written: ${why}`]);
  }
  if (written === 'in_the_way') {
    return badInput([
      `${output}: nothing was written. What lies there is no card, or was changed after Furrow wrote it: name another file, or move it away first.`,
    ]);
  }
  if (answer.plan === undefined) {
    return {
      exit: EXIT.refusal,
      problem: [`${output} says why there is no plan; it holds no setting to run.`],
    };
  }
  const place = written === 'replaced' ? ', in place of an earlier card' : '';
  return { exit: EXIT.plan, print: `Wrote ${output}${place}.` };
});
