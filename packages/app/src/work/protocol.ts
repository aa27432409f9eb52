/** What the page tells a worker: a request, which takes the place of what is under way, or to leave off. */
export type WorkCommand<Request> =
  | { readonly is: 'ask'; readonly id: number; readonly request: Request }
  | { readonly is: 'stop' };

/** What a job in a worker yields: a part of the answer, or how far the next part is [-]. */
export type WorkStep<Part> =
  | { readonly is: 'part'; readonly part: Part }
  | { readonly is: 'progress'; readonly share: number };

/** What comes of a request: steps, then the end; or why the job broke. */
export type WorkEvent<Part> =
  | WorkStep<Part>
  | { readonly is: 'done' }
  | { readonly is: 'failure'; readonly message: string };

/** What a worker replies to the request of that id. */
export type WorkReply<Part> = { readonly id: number } & WorkEvent<Part>;

/** A job of a worker: answers a request part by part; within a long part it tells how far it is [-]. */
export type WorkJob<Request, Part> = (
  request: Request,
  tell: (share: number) => void,
) => Iterable<WorkStep<Part>>;

/** What the page needs of a worker; a test hands in one of its own. */
export interface WorkerLink<Request, Part> {
  onReply: (reply: WorkReply<Part>) => void;
  onCrash: (message: string) => void;
  readonly post: (command: WorkCommand<Request>) => void;
  readonly end: () => void;
}
