import type { WorkCommand, WorkJob, WorkReply } from './protocol.ts';

/** The longest that a job goes on without looking for a newer command [ms]. */
const SLICE = 40;

/** What serving uses of the worker; a test hands in tools of its own. */
export interface ServeTools<Part> {
  readonly reply: (reply: WorkReply<Part>) => void;
  /** Lets newer commands come in. */
  readonly pause: () => Promise<void>;
  /** A clock that only goes forward [ms]. */
  readonly now: () => number;
}

/** Takes commands: answers the newest request part by part, and leaves off as soon as another command is there. */
export function serve<Request, Part>(
  job: WorkJob<Request, Part>,
  { reply, pause, now }: ServeTools<Part>,
): (command: WorkCommand<Request>) => Promise<void> {
  let turns = 0;
  return async (command) => {
    turns += 1;
    if (command.is === 'stop') return;
    const turn = turns;
    const { id, request } = command;
    try {
      // of requests that came in together only the last is begun
      await pause();
      if (turn !== turns) return;
      let looked = now();
      let told = looked;
      const tell = (share: number): void => {
        if (now() - told < SLICE) return;
        told = now();
        reply({ id, is: 'progress', share });
      };
      for (const step of job(request, tell)) {
        if (step.is === 'progress' && now() - looked < SLICE) continue;
        reply({ id, ...step });
        await pause();
        if (turn !== turns) return;
        looked = now();
      }
      reply({ id, is: 'done' });
    } catch (error) {
      reply({ id, is: 'failure', message: error instanceof Error ? error.message : String(error) });
    }
  };
}
