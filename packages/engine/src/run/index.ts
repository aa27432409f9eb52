export { causesOf, type EventCauses } from './causes.ts';
export { changePoints, noiseOf } from './change-points.ts';
export { type DepthAlong, depthAlong } from './depth-along.ts';
export { type ExpectedPass, expectationOf, type RunExpectation } from './expectation.ts';
export { planRest, planStretch, type RunSoFar, runSoFar } from './further-passes.ts';
export { LiveWatch } from './live-watch.ts';
export type { Channel, ClockNote, LogBatch } from './log-batch.ts';
export { type ClockReading, type LogEnd, LogReader, readParquetLog } from './log-reader.ts';
export type { Deviation, EventKind, PassRun, RunEvent, RunOutcome, RunTotals, WaySource } from './outcome.ts';
export { LogParquetWriter } from './parquet-writer.ts';
export { travelForDepth } from './plan-setting.ts';
export type { Recut } from './recut.ts';
export { readFaults } from './rehearse/read-faults.ts';
export { rehearsalHead, rehearsalRows } from './rehearse/rehearsal-text.ts';
export {
  REHEARSAL_CHANNELS,
  type Rehearsal,
  type RehearsalDepth,
  type RehearsalFault,
  type RehearsalFaultKind,
  type RehearsalInput,
  type RehearsalTruth,
  rehearse,
} from './rehearse/rehearse.ts';
export { type RunReview, reviewRun } from './review-run.ts';
export type { WayBins } from './seam-course.ts';
export { isWhole, type Judged, type SeamStretch, stretchesOf } from './stretches.ts';
export { type ChannelTrace, type LogTrace, TRACE_CHANNELS, type TraceBuilder, traceLog } from './trace.ts';
