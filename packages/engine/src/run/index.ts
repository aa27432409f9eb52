export type { Channel, ClockNote, LogBatch } from './log-batch.ts';
export { type ClockReading, type GivenLog, type LogEnd, LogReader } from './log-reader.ts';
