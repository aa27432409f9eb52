export { type Metrics, openMetrics } from './metrics.ts';
export type { Served } from './served.ts';
export { type Health, type Monitor, startMonitor } from './start-monitor.ts';
export { openLog, type StructuredLog } from './structured-log.ts';
