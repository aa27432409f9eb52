import type { Job, KitElectrode } from '../job/index.ts';
import type { Limit } from './limit.ts';

/** One setting that the planner considers, as the limit functions see it; SI. */
export interface Candidate {
  readonly electrode: KitElectrode;
  /** Current [A]. */
  readonly current: number;
  /** Arc voltage [V]. */
  readonly voltage: number;
  /** Push angle [rad]. */
  readonly pushAngle: number;
  /** Travel [m/s]. */
  readonly travel: number;
  /** Tracks side by side [-]. */
  readonly tracks: number;
  /** Layers on top of each other [-]. */
  readonly layers: number;
  /** Length of one pass [m]. */
  readonly passLength: number;
  /** Median depth of one pass [m]. */
  readonly passDepth: number;
  /** Median nominal width of one pass [m]. */
  readonly passWidth: number;
}

/** Turns a candidate into limits. Rooms such as supply and heat hand these to the planner, which knows nothing of them. */
export type LimitFunction = (candidate: Candidate, job: Job) => readonly Limit[];
