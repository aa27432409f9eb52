export type { Channel, ClockNote, LogBatch } from './log-batch.ts';
