import { writeFileSync } from 'node:fs';
import { PROGRAM_VERSION } from '@furrow/contract';
import {
  answerJob,
  answerKnowledge,
  answerNextTrial,
  knowledgeFrom,
  knowledgeOf,
  mergeSummaries,
  type ReadSummary,
  summaryOf,
  type UnitSystem,
  writeSummary,
} from '@furrow/engine';
import { renderKnowledgeText, renderNextTrialText } from '@furrow/papers';
import { badInput, type Run, type Told } from '../frame/command.ts';
import { EXIT } from '../frame/exit-code.ts';
import { loadJob, loadKnowledge, loadSummary, loadTrials } from '../frame/load-document.ts';
import { printed } from '../frame/on-job.ts';
import { whyUnwritable } from '../output/disk.ts';

interface KnowledgeOptions {
  readonly json: boolean;
  readonly units: UnitSystem;
  /** Job files that the next trial is to teach something for. */
  readonly nextTrial?: readonly string[];
  /** File to write a summary into. */
  readonly output?: string;
}

/** Tells what a shop knows; exports it as a summary, or merges summaries; proposes the next trial. */
export const run: Run<KnowledgeOptions> = async (files, options) => {
  const [what, ...rest] = files;
  if (what === 'export') return exported(rest, options);
  if (what === 'merge') return merged(rest, options);
  if (options.output !== undefined) return badInput(['--output goes with furrow knowledge export or merge.']);
  if (options.nextTrial !== undefined) return proposed(files, options.nextTrial, options);
  if (files.length !== 1) return badInput(['Name one trials file, or export or merge and their files.']);
  const loaded = await loadTrials(what ?? '-');
  if (!loaded.ok) return badInput(loaded.lines);
  const report = answerKnowledge(loaded.read);
  const { json, units } = options;
  return { exit: EXIT.plan, print: printed(json, report, () => renderKnowledgeText(report, units)) };
};

async function exported(files: readonly string[], options: KnowledgeOptions): Promise<Told> {
  const [file] = files;
  if (file === undefined || files.length > 1)
    return badInput(['Export one trials file: furrow knowledge export FILE.']);
  const loaded = await loadTrials(file);
  if (!loaded.ok) return badInput(loaded.lines);
  return written(writeSummary([summaryOf(knowledgeOf(loaded.read))]), options);
}

async function merged(files: readonly string[], options: KnowledgeOptions): Promise<Told> {
  if (files.length === 0) return badInput(['Name the summaries to merge: furrow knowledge merge FILE...']);
  const summaries: ReadSummary[] = [];
  for (const file of files) {
    const loaded = await loadSummary(file);
    if (!loaded.ok) return badInput(loaded.lines);
    summaries.push(loaded.read);
  }
  return written(writeSummary(mergeSummaries(summaries.flatMap(({ shops }) => shops))), options);
}

function written(text: string, { output }: KnowledgeOptions): Told {
  if (output === undefined) return { exit: EXIT.plan, print: text.trimEnd() };
  try {
    writeFileSync(output, text);
  } catch (error) {
    const why = whyUnwritable(error);
    if (why === undefined) throw error;
    return badInput([`${output}: the summary could not be written: ${why}`]);
  }
  return { exit: EXIT.plan, print: `Wrote ${output}.` };
}

async function proposed(
  files: readonly string[],
  jobFiles: readonly string[],
  { json, units }: KnowledgeOptions,
): Promise<Told> {
  const loaded = await loadKnowledge(files);
  if (!loaded.ok) return badInput(loaded.lines);
  const knowledge = knowledgeFrom(loaded.read.trials, loaded.read.summary);
  if (knowledge === undefined) return badInput(['Name the trials file that the trial is to add to.']);
  const jobs = [];
  for (const file of jobFiles) {
    const job = await loadJob(file, units);
    if (!job.ok) return badInput(job.lines);
    const { basis } = answerJob({ job: job.read, version: PROGRAM_VERSION, knowledge });
    jobs.push({ read: job.read, basis });
  }
  const trial = answerNextTrial(knowledge, jobs);
  if (trial === undefined) return badInput(['No electrode of the first job has a current range to try.']);
  return { exit: EXIT.plan, print: printed(json, trial, () => renderNextTrialText(trial, units)) };
}
