import type { WorkEvent, WorkerLink, WorkReply } from '../work/index.ts';

/** A worker that does nothing: it keeps what it is asked, and replies and crashes when a test wants it to. */
export class FakeWorker<Request, Part> implements WorkerLink<Request, Part> {
  onReply: (reply: WorkReply<Part>) => void = () => {};
  onCrash: (message: string) => void = () => {};
  readonly requests: Request[] = [];
  stopped = false;
  ended = false;
  /** Id of the newest request. */
  #id = 0;

  readonly post: WorkerLink<Request, Part>['post'] = (command) => {
    this.stopped = command.is === 'stop';
    if (command.is === 'stop') return;
    this.#id = command.id;
    this.requests.push(command.request);
  };

  readonly end = (): void => {
    this.ended = true;
  };

  /** Replies to the newest request, or to the one of an id. */
  reply(event: WorkEvent<Part>, id = this.#id): void {
    this.onReply({ id, ...event });
  }

  /** Replies with a part of the answer. */
  part(part: Part): void {
    this.reply({ is: 'part', part });
  }
}
