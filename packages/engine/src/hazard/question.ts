import type { Job } from '../job/index.ts';
import type { ElectrodeGas } from './carbon-monoxide.ts';
import type { PlanPoint } from './convex-hull.ts';

/** What the hazards of a job are told from. */
export interface HazardQuestion {
  readonly job: Job;
  /** Greatest current of the plan; undefined without a plan [A]. */
  readonly current?: number | undefined;
  /** Arc time of the whole job, 90th percentile; undefined without a plan [s]. */
  readonly arcTime?: number | undefined;
  /** What burns off the electrode while its arc burns; undefined without a plan. */
  readonly gas?: ElectrodeGas | undefined;
  /** Power sources; undefined without a kit. */
  readonly sources?:
    | readonly {
        readonly name: string;
        /** Highest voltage without load; null where the plate does not tell [V]. */
        readonly noLoadVoltage: number | null;
      }[]
    | undefined;
  /** Bores of the hoses; undefined without a kit [m]. */
  readonly hoseBores?: readonly number[] | undefined;
  /** The seam in the plan of the bay; undefined where no kit describes one. */
  readonly baySeam?: readonly PlanPoint[] | undefined;
}
