import type { Job } from '../job/index.ts';
import type { OntoFloorChances, PlanOutcome, StopOutcome } from '../plan/index.ts';
import {
  beliefOfElectrode,
  type Prediction,
  predictDepth,
  type RemovalBelief,
  startDwell,
} from '../removal/index.ts';
import { planStretch, type RunSoFar } from './further-passes.ts';
import { settingOf, travelForDepth } from './plan-setting.ts';

/** A stretch cut again, as a short plan; SI. */
export interface Recut {
  /** Where the arc is struck, run-in included, from the start of the seam [m]. */
  readonly from: number;
  /** Where it is let go out, run-out included [m]. */
  readonly to: number;
  /** Current [A]. */
  readonly current: number;
  /** Arc voltage [V]. */
  readonly voltage: number;
  /** Travel of the passes before a gauge stop, or of all; where it is gauged first, that of the middle row of the table [m/s]. */
  readonly travel: number;
  /** Passes on top of each other [-]. */
  readonly passes: number;
  /** How many of them come before the gauge stop; all where there is none [-]. */
  readonly passesBefore: number;
  /** Where the stretch is gauged, and what the mean says to do with the passes after it. */
  readonly stop: StopOutcome | undefined;
  /** Wait between arc and travel [s]. */
  readonly dwell: number;
  /** What one pass at that travel takes off, with its interval [m]. */
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
    : recutAt(stretch, { travel, passes: 1, passesBefore: 1 }, { job, plan, belief });
}

/** The recut of a stretch that brings it to depth from the floor now expected; undefined where leaving it is surer. */
export function recutToDepth(
  stretch: { readonly from: number; readonly to: number },
  run: RunSoFar,
): Recut | undefined {
  const planned = planStretch(run, stretch, RAMP * run.plan.electrode.diameter);
  const { passes, passesBefore, table, chances, stations } = planned;
  const travels = table.flatMap((row) => (row.travel === undefined ? [] : [row.travel]));
  const travel = planned.travel ?? travels[Math.floor(travels.length / 2)];
  if (passes === 0 || travel === undefined) return undefined;
  const stop =
    table.length === 0
      ? undefined
      : {
          afterLayer: run.along.layers.length + passesBefore,
          stations,
          readingSd: run.job.kit.gauge.reading_sd,
          table,
        };
  return recutAt(stretch, { travel, passes, passesBefore, stop, chances }, run);
}

function recutAt(
  { from, to }: { readonly from: number; readonly to: number },
  {
    travel,
    passes,
    passesBefore,
    stop,
    chances,
  }: Pick<Recut, 'travel' | 'passes' | 'passesBefore'> & Partial<Pick<Recut, 'stop' | 'chances'>>,
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
    passes,
    passesBefore,
    stop,
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
