import type { Answer, HeatAnswer, Knowledge, ReadJob } from '@furrow/engine';
import {
  HEAT_QUALITIES,
  type HeatCommand,
  type HeatQuality,
  type HeatReply,
  type HeatRequest,
} from './heat-message.ts';
import { learnedFrom } from './learned-from.ts';

/** The longest the worker goes on without looking for a newer request [ms]. */
const SLICE = 40;

/** What a run uses; a test hands in tools of its own. */
export interface HeatRunTools {
  /** Solves in steps: yields the share done, returns the answer, or null where no plan holds. */
  readonly solve: (
    read: ReadJob,
    answer: Answer,
    options: {
      readonly station?: number;
      readonly quality: HeatQuality;
      readonly knowledge: Knowledge | undefined;
    },
  ) => Generator<number, HeatAnswer | null>;
  readonly reply: (reply: HeatReply) => void;
  /** Lets newer commands come in. */
  readonly pause: () => Promise<void>;
  /** A clock that only goes forward [ms]. */
  readonly now: () => number;
}

/** Takes commands: solves the newest request, quick look first, and leaves off as soon as another command is there. */
export function heatRun(tools: HeatRunTools): (command: HeatCommand) => Promise<void> {
  let newest = 0;
  return async (command) => {
    newest += 1;
    const turn = newest;
    if (command.is === 'stop') return;
    try {
      await run(command, tools, () => turn === newest);
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error);
      if (turn === newest) tools.reply({ id: command.id, is: 'failure', message });
    }
  };
}

async function run(request: HeatRequest, tools: HeatRunTools, wanted: () => boolean): Promise<void> {
  const { id, read, answer, station } = request;
  const knowledge = learnedFrom(request.knowledge);
  const { solve, reply, pause, now } = tools;
  for (const quality of HEAT_QUALITIES) {
    const began = now();
    const steps = solve(read, answer, { quality, knowledge, ...(station === undefined ? {} : { station }) });
    let looked = began;
    let step = steps.next();
    while (step.done !== true) {
      if (now() - looked >= SLICE) {
        reply({ id, is: 'progress', quality, share: step.value });
        await pause();
        if (!wanted()) return;
        looked = now();
      }
      step = steps.next();
    }
    if (step.value === null) {
      reply({ id, is: 'nothing' });
      return;
    }
    reply({ id, is: 'answer', quality, heat: step.value, took_ms: now() - began });
    await pause();
    if (!wanted()) return;
  }
}
