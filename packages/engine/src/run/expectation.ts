import type { Job } from '../job/index.ts';
import { type PlanOutcome, usableLength } from '../plan/index.ts';
import { predictWear, type RemovalBelief } from '../removal/index.ts';

/** A pass as planned, run-outs included; SI. */
export interface ExpectedPass {
  /** Number of the pass in the plan, from 1 [-]. */
  readonly number: number;
  /** Where the arc is struck, from the start of the seam [m]. */
  readonly from: number;
  /** Where the arc goes out [m]. */
  readonly to: number;
  /** Travel, for the middle reading where a table sets it [m/s]. */
  readonly travel: number;
  /** Wait between arc and travel [s]. */
  readonly dwell: number;
}

/** What a log is held against: the plan's set points and the seam; SI. */
export interface RunExpectation {
  /** Length of the seam [m]. */
  readonly length: number;
  readonly girth: boolean;
  /** Time from losing the arc until the carriage stops [s]. */
  readonly lossWindow: number;
  /** Set current [A]. */
  readonly current: number;
  /** Set arc voltage [V]. */
  readonly voltage: number;
  /** Lower end of the window of arc voltage [V]. */
  readonly voltageLeast: number;
  /** Upper end of it [V]. */
  readonly voltageMost: number;
  /** Length of one electrode that can be burnt [m]. */
  readonly electrode: number;
  /** Length of electrode burnt per ampere-second, median [m/(A s)]. */
  readonly wear: number;
  readonly passes: readonly ExpectedPass[];
}

/**
 * What the log of a run of this plan should show.
 *
 * @param job - the job [record], from `readJob`
 * @param plan - its plan [record], from `planJob`
 * @param belief - what is known of removal [record], as the plan was made with
 * @returns set points, passes and seam [record]
 * @source none: bookkeeping
 * @example
 * expectationOf(demoJob.job, demoAnswer.basis.plan, publishedBelief(metalOf('carbon_steel'), 'flat')).lossWindow // => 0.4
 */
export function expectationOf({ seam, kit }: Job, plan: PlanOutcome, belief: RemovalBelief): RunExpectation {
  const runOut = (plan.passLength - seam.length) / 2;
  const [first] = plan.passes;
  return {
    length: seam.length,
    girth: seam.path === 'girth',
    lossWindow: kit.loss_window,
    current: first?.current ?? Number.NaN,
    voltage: first?.voltage ?? Number.NaN,
    voltageLeast: kit.arc_voltage.least,
    voltageMost: kit.arc_voltage.most,
    electrode: usableLength(plan.electrode),
    wear: predictWear(belief, plan.electrode.diameter, 1).p50,
    passes: plan.passes.map(({ number, from, to, travel, dwell }) => ({
      number,
      from: from - runOut,
      to: to + runOut,
      travel,
      dwell,
    })),
  };
}
