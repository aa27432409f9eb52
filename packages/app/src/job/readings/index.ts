export { useReadings, useReadingsDesk } from './readings-context.ts';
export type { ReadingsDesk } from './readings-desk.ts';
export { ReadingsOfJob } from './readings-of-job.tsx';
export { ReadingsStatus } from './readings-status.tsx';
