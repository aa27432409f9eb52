import { useEffect, useRef, useState } from 'preact/hooks';
import { createClient, type WorkClient } from './client.ts';
import type { WorkEvent, WorkerLink } from './protocol.ts';

/** A worker of its own for a component as long as it stands; `onEvent` takes what comes of the newest request. */
export function useClient<Request, Part>(
  start: () => WorkerLink<Request, Part>,
  onEvent: (event: WorkEvent<Part>) => void,
): WorkClient<Request> {
  const heard = useRef(onEvent);
  heard.current = onEvent;
  const [client] = useState(() => createClient(start, (reply) => heard.current(reply)));
  useEffect(() => client.close, [client]);
  return client;
}
