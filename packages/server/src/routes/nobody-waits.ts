import type { FastifyReply } from 'fastify';

/** Comes when the one who asked has gone before the answer was complete, so that nothing more is done for it. */
export function nobodyWaits({ raw }: FastifyReply): AbortSignal {
  const gone = new AbortController();
  raw.once('close', () => {
    if (!raw.writableFinished) gone.abort();
  });
  return gone.signal;
}
