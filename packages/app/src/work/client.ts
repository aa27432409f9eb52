import type { WorkerLink, WorkReply } from './protocol.ts';

/** The page's side of a worker; of several requests only the newest counts. */
export interface WorkClient<Request> {
  readonly ask: (request: Request) => void;
  /** Gives up what is under way. */
  readonly stop: () => void;
  readonly close: () => void;
}

/** The request whose answer is waited for. */
interface Wanted<Request> {
  readonly id: number;
  readonly request: Request;
  /** Whether an older request was under way, and no reply to this one came yet: a crash may be the older one's. */
  readonly behind: boolean;
}

/** Starts the worker with the first request and hands on replies to the newest alone; a worker that crashed is started anew. */
export function createClient<Request, Part>(
  start: () => WorkerLink<Request, Part>,
  onReply: (reply: WorkReply<Part>) => void,
): WorkClient<Request> {
  let worker: WorkerLink<Request, Part> | undefined;
  let wanted: Wanted<Request> | undefined;
  let count = 0;

  const send = ({ id, request }: Wanted<Request>): void => {
    worker ??= started();
    worker.post({ is: 'ask', id, request });
  };
  const started = (): WorkerLink<Request, Part> => {
    const fresh = start();
    fresh.onReply = (reply) => {
      if (worker !== fresh || reply.id !== wanted?.id) return;
      const ended = reply.is === 'done' || reply.is === 'failure';
      wanted = ended ? undefined : { ...wanted, behind: false };
      onReply(reply);
    };
    fresh.onCrash = (message) => {
      if (worker !== fresh) return;
      fresh.end();
      worker = undefined;
      const lost = wanted;
      wanted = lost?.behind === true ? { ...lost, behind: false } : undefined;
      if (wanted !== undefined) send(wanted);
      else if (lost !== undefined) onReply({ id: lost.id, is: 'failure', message });
    };
    return fresh;
  };
  return {
    ask(request) {
      count += 1;
      wanted = { id: count, request, behind: wanted !== undefined };
      send(wanted);
    },
    stop() {
      wanted = undefined;
      worker?.post({ is: 'stop' });
    },
    close() {
      wanted = undefined;
      worker?.end();
      worker = undefined;
    },
  };
}
