import type { Job } from '../job/index.ts';
import type { OntoFloorChances, PlanOutcome } from '../plan/index.ts';
import {
  beliefOfElectrode,
  type Prediction,
  predictDepth,
  type RemovalBelief,
  startDwell,
} from '../removal/index.ts';
import { planStretch, type RunSoFar } from './further-passes.ts';
import { settingOf, travelForDepth } from './plan-setting.ts';

/** A cut of one set-up to a depth, as a short plan; SI. */
export interface Recut {
  /** Where the arc is struck, run-in included, from the start of the seam [m]. */
  readonly from: number;
  /** Where it is let go out, run-out included [m]. */
  readonly to: number;
  /** Current [A]. */
  readonly current: number;
  /** Arc voltage [V]. */
  readonly voltage: number;
  /** Travel [m/s]. */
  readonly travel: number;
  /** Wait between arc and travel [s]. */
  readonly dwell: number;
  /** What it is to take off, with its interval [m]. */
  readonly depth: Prediction;
  /** Length of run-in and of run-out, each inside its ends [m]. */
  readonly ramp: number;
  /** Chances of the stretch afterwards; undefined while passes of the plan remain, which decide it. */
  readonly chances: OntoFloorChances | undefined;
}

/** Length over which a recut comes up to depth and runs out, in electrode diameters [-] (judgement, no source). */
const RAMP = 1;

/**
 * The recut of a stretch that brings it level with the groove beside it, while passes of the plan remain; undefined where
 * the carriage cannot run fast enough to cut so little.
 */
export function recutLevel(
  stretch: { readonly from: number; readonly to: number; readonly depth: number },
  job: Job,
  plan: PlanOutcome,
  belief: RemovalBelief,
): Recut | undefined {
  const travel = Math.max(job.kit.travel.least, travelForDepth(job, plan, belief, stretch.depth));
  return travel > job.kit.travel.most
    ? undefined
    : recutAt(stretch, travel, undefined, { job, plan, belief });
}

/** The recut of a stretch that brings it to depth from the floor now expected; undefined where leaving it is surer. */
export function recutToDepth(
  stretch: { readonly from: number; readonly to: number },
  run: RunSoFar,
): Recut | undefined {
  const planned = planStretch(run, stretch, RAMP * run.plan.electrode.diameter);
  return planned.travel === undefined ? undefined : recutAt(stretch, planned.travel, planned.chances, run);
}

function recutAt(
  { from, to }: { readonly from: number; readonly to: number },
  travel: number,
  chances: OntoFloorChances | undefined,
  { job, plan, belief }: Omit<RunSoFar, 'along'>,
): Recut {
  const { diameter } = plan.electrode;
  const { current, voltage, pushAngle } = settingOf(job, plan);
  const ramp = RAMP * diameter;
  return {
    from: Math.max(0, from - ramp),
    to: Math.min(job.seam.length, to + ramp),
    ramp,
    current,
    voltage,
    travel,
    dwell: startDwell(diameter, pushAngle, travel),
    depth: predictDepth(beliefOfElectrode(belief, plan.electrode), {
      diameter,
      current,
      voltage,
      travel,
      pushAngle,
    }),
    chances,
  };
}
