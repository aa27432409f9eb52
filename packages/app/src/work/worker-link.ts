/** What the page needs of a worker; a test hands in one of its own. */
export interface WorkerLink<Request, Reply> {
  onReply: (reply: Reply) => void;
  onCrash: (message: string) => void;
  readonly post: (request: Request) => void;
  readonly end: () => void;
}

/** Links the page to a worker of the browser; its name is for the words of a crash. */
export function linkWorker<Request, Reply>(worker: Worker, name: string): WorkerLink<Request, Reply> {
  const link: WorkerLink<Request, Reply> = {
    onReply: () => {},
    onCrash: () => {},
    post: (request) => worker.postMessage(request),
    end: () => worker.terminate(),
  };
  worker.addEventListener('message', (event: MessageEvent<Reply>) => link.onReply(event.data));
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    link.onCrash(event.message || `the ${name} could not be started`);
  });
  return link;
}
