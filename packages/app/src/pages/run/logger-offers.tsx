import type { SavedLogger } from '@furrow/contract';
import type { VNode } from 'preact';
import { useKept, useRun, useRunDesk } from './run-context.ts';

/** Logger descriptions of the shop that know the columns of the log that is open: offered, not taken unasked. */
export function LoggerOffers(): VNode | null {
  const desk = useRunDesk();
  const log = useRun((state) => state.log);
  const columns = useRun((state) => state.shown?.report.reading.columns);
  const loggers = useKept((state) => state.loggers);
  if (log === undefined || log.source.is !== 'file' || columns === undefined) return null;
  const names = new Set(columns.map(({ name }) => name));
  const fitting = loggers.filter((logger) => logger.text !== log.logger && knows(logger, names));
  if (fitting.length === 0) return null;
  return (
    <div class="log-source-row">
      <p class="caption">A logger of the shop writes these columns:</p>
      {fitting.map(({ revision, name, text }) => (
        <button
          key={revision}
          type="button"
          onClick={() => desk.open({ ...log, given: undefined, logger: text, kept: undefined })}
        >
          Read as {name === '' ? 'kept' : name}
        </button>
      ))}
    </div>
  );
}

function knows({ columns }: SavedLogger, names: ReadonlySet<string>): boolean {
  return columns.length > 0 && columns.every((column) => names.has(column));
}
