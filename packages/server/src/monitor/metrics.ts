import { PROGRAM_VERSION } from '@furrow/contract';
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { Served } from './served.ts';

/** Numbers for whoever watches over the program, in the text format of OpenMetrics' forerunner, Prometheus. */
export interface Metrics {
  readonly served: (served: Served) => void;
  /** Has a number read when it is asked for. */
  readonly gauge: (name: string, help: string, read: () => number) => void;
  readonly text: () => Promise<string>;
  readonly contentType: string;
}

/** Counts from now on. */
export function openMetrics(): Metrics {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const registers = [registry];
  new Gauge({ name: 'furrow_info', help: 'Version of the program.', labelNames: ['version'], registers })
    .labels(PROGRAM_VERSION)
    .set(1);
  const requests = new Counter({
    name: 'furrow_http_requests_total',
    help: 'Requests that were answered.',
    labelNames: ['method', 'route', 'status'],
    registers,
  });
  const refusals = new Counter({
    name: 'furrow_refusals_total',
    help: 'Requests that were refused, by code: SIGN_IN_REFUSED, NOT_PERMITTED, STORE_UNAVAILABLE and so on.',
    labelNames: ['code'],
    registers,
  });
  const durations = new Histogram({
    name: 'furrow_http_request_duration_seconds',
    help: 'Time until a request was answered.',
    labelNames: ['route'],
    buckets: [0.01, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 20],
    registers,
  });
  return {
    served: ({ method, route, status, seconds, code }) => {
      requests.labels(method, route, String(status)).inc();
      durations.labels(route).observe(seconds);
      if (code !== undefined) refusals.labels(code).inc();
    },
    gauge: (name, help, read) => {
      new Gauge({
        name,
        help,
        registers,
        collect() {
          this.set(read());
        },
      });
    },
    text: () => registry.metrics(),
    contentType: registry.contentType,
  };
}
