import { PROGRAM_VERSION } from '@furrow/contract';
import { type DestinationStream, pino } from 'pino';
import type { Served } from './served.ts';

/** What happens, a JSON object a line. */
export interface StructuredLog {
  readonly served: (served: Served) => void;
  /** Tells of a bug, or of what cannot go on. */
  readonly trouble: (message: string) => void;
  readonly note: (message: string) => void;
}

/** Writes to a stream; requests that went well are told of at level info, refusals at warn, bugs at error. */
export function openLog(to: DestinationStream): StructuredLog {
  const log = pino(
    {
      base: { program: 'furrow', version: PROGRAM_VERSION, process: process.pid },
      timestamp: () => `,"at":"${new Date().toISOString()}"`,
      formatters: { level: (level) => ({ level }) },
      messageKey: 'message',
    },
    to,
  );
  return {
    served: ({ seconds, ...served }) => {
      const level = served.status >= 500 ? 'error' : served.status >= 400 ? 'warn' : 'info';
      log[level]({ ...served, ms: Math.round(seconds * 1000) }, 'request');
    },
    trouble: (message) => log.error(message),
    note: (message) => log.info(message),
  };
}
