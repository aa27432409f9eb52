import type { Observer } from '@furrow/server';
import type { Streams } from './streams.ts';

/** Options of a program that runs on and on. */
export interface WatchOptions {
  /** Port of the monitor; none where left out [-]. */
  readonly monitor?: number;
  readonly log: 'text' | 'json';
}

/** What tells of a program that runs on and on. */
export interface Watcher {
  readonly log: (message: string) => void;
  /** Undefined where nobody watches: then nothing is counted. */
  readonly observer: Observer | undefined;
  readonly close: () => Promise<void>;
}

/** How long the database may take to answer before the program counts as unhealthy [ms]. */
const HEALTHY_WITHIN = 3000;

/** Opens what was asked for; what counts and writes is brought in then only. */
export async function openWatcher(
  { monitor: port, log: form }: WatchOptions,
  streams: Streams,
  check: () => Promise<void>,
): Promise<Watcher> {
  const plain = (message: string): void => void streams.problem([message]);
  if (port === undefined && form === 'text')
    return { log: plain, observer: undefined, close: async () => undefined };
  const { openLog, openMetrics, startMonitor } = await import('@furrow/server/monitor');
  const log = form === 'json' ? openLog({ write: (line) => plain(line.trimEnd()) }) : undefined;
  const metrics = openMetrics();
  const health = async () => {
    const late = AbortSignal.timeout(HEALTHY_WITHIN);
    try {
      await Promise.race([
        check(),
        new Promise((_, reject) =>
          late.addEventListener('abort', () => reject(new Error('the database does not answer'))),
        ),
      ]);
      return { ok: true };
    } catch (error) {
      return { ok: false, trouble: error instanceof Error ? error.message : String(error) };
    }
  };
  const monitor = port === undefined ? undefined : await startMonitor({ health, metrics }, port);
  if (monitor !== undefined)
    streams.print(
      `Health and metrics, on this computer: http://127.0.0.1:${monitor.port}/health and /metrics`,
    );
  return {
    log: log?.trouble ?? plain,
    observer: {
      served: (served) => {
        metrics.served(served);
        log?.served(served);
      },
      gauge: metrics.gauge,
    },
    close: async () => monitor?.close(),
  };
}
