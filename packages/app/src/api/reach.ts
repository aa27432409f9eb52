/** Whether the server answered when it was asked last; taken to be there until it does not answer. */
let reached = true;
const listeners = new Set<() => void>();

/** Whether the server is reached, as far as is known. */
export function isReached(): boolean {
  return reached;
}

/** Calls back after each change until the returned function is called. */
export function listenReach(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** To be called with every answer, and where none came. */
export function noteReach(now: boolean): void {
  if (now === reached) return;
  reached = now;
  for (const listener of [...listeners]) listener();
}
