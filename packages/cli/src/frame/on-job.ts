import { PROGRAM_VERSION } from '@furrow/contract';
import {
  type Answer,
  answerJob,
  type Knowledge,
  knowledgeFrom,
  type ReadJob,
  type ReadKit,
  type ReadReadings,
  type UnitSystem,
} from '@furrow/engine';
import { badInput, type Run, type Told } from './command.ts';
import { EXIT } from './exit-code.ts';
import { loadJobFiles } from './load-document.ts';
import type { Streams } from './streams.ts';

/** Options of every command about a job. */
export interface JobOptions {
  readonly units: UnitSystem;
  /** Kit file whose margins the plan keeps; none if left out. */
  readonly kit?: string;
  /** File of what was run and gauged; none if left out. */
  readonly readings?: string;
  /** Trials file of the shop, or a summary, whose knowledge the plan is made with; the published rows alone if left out. */
  readonly knowledge?: readonly string[];
}

/** A job with what was read beside it. */
export interface JobQuestion {
  readonly job: ReadJob;
  readonly kit: ReadKit | undefined;
  readonly readings: ReadReadings | undefined;
  /** What the shop has learned, where its trials were named. */
  readonly knowledge: Knowledge | undefined;
  /** The files as written. */
  readonly texts: {
    readonly job: string;
    readonly kit: string | undefined;
    readonly readings: string | undefined;
  };
}

/** The frame of every command about a job: reads the files, and hands over the question with its answer. */
export function onJob<Options extends JobOptions>(
  tell: (question: JobQuestion, answer: Answer, options: Options, streams: Streams) => Told | Promise<Told>,
  /** What is wrong with the options, known once the job is; nothing for most commands. */
  refuse: (question: JobQuestion, options: Options) => readonly string[] = () => [],
): Run<Options> {
  return async ([file = '-'], options, streams) => {
    const files = {
      job: file,
      kit: options.kit,
      readings: options.readings,
      knowledge: options.knowledge,
    };
    const loaded = await loadJobFiles(files, options.units);
    if (!loaded.ok) return badInput(loaded.lines);
    const { trials, summary, ...read } = loaded.read;
    const knowledge = knowledgeFrom(trials, summary);
    const question = { ...read, knowledge };
    const wrong = refuse(question, options);
    if (wrong.length > 0) return badInput(wrong);
    const answer = answerJob({
      job: question.job,
      version: PROGRAM_VERSION,
      kit: question.kit,
      knowledge,
    });
    return tell(question, answer, options, streams);
  };
}

/** Exit code of what rests on a plan: 0 where there is one, 3 where the job is refused. */
export function exitOf({ plan }: Answer): number {
  return plan === undefined ? EXIT.refusal : EXIT.plan;
}

/** A result, as one JSON object for programs or as text for people. */
export function printed(json: boolean, result: unknown, text: () => string): string {
  return json ? JSON.stringify(result, null, 2) : text();
}
