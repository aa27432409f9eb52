import { FAULT_MODEL } from '../faults/index.ts';
import type { Issue, Outcome } from '../issue/index.ts';
import type { Job } from '../job/index.ts';
import { airChecks } from './air-checks.ts';
import type { CommissionCheck } from './check.ts';
import { pointVolts } from './circuit-volts.ts';
import {
  type CommissionInput,
  type CommissionOptions,
  type PlannedPasses,
  trialPass,
} from './commission-input.ts';
import type { CommissionSupply } from './commission-supply.ts';
import { finishCheck } from './draft.ts';
import { noLoadChecks, trialArcChecks } from './electric-checks.ts';
import { type StatedFigure, USUAL_INSTRUMENTS } from './instruments.ts';
import { lossWindowCheck, motionChecks } from './motion-checks.ts';
import { plateCheck } from './plate-check.ts';
import { settingChecks } from './setting-checks.ts';
import { supplyIssues } from './supply-issues.ts';

/** Stick-out where the shop states none [m]. */
export const USUAL_STICK_OUT: StatedFigure = {
  value: 0.1,
  source: 'judgement, no source: set the length of the shop’s own head',
};

function optionIssues({ instruments, stickOut }: CommissionOptions): Issue[] {
  const figures = Object.entries({ ...instruments, stickOut: { value: stickOut ?? 1 } });
  return figures
    .filter(
      ([name, { value }]) => !Number.isFinite(value) || value < 0 || (name === 'stickOut' && value === 0),
    )
    .map(([name, { value }]) => ({
      code: 'COMMISSION_INPUT',
      message: `Commissioning needs a number above 0 here, but ${value} stands at ${name}.`,
      path: name,
      read: String(value),
    }));
}

/**
 * Lists the checks before the first arc, each with the reading to expect and its band.
 *
 * They come in the order in which they are made: power off, air on, dry run, no load, trial arc on scrap, which is set
 * as the pass with the greatest current. A band is the expected reading plus and minus the root of the sum of the
 * squares of the stated uncertainties, each of which stands in the check with its source. Volts at a point are those of
 * the arc and of what is lost between the point and the arc; travel is timed over a marked length, the shortest one over
 * which the watch is good to 2 %. Each band is for the rig as it is at that check: leads cold, receiver between cut-in and
 * cut-out, plate at what it is to be gouged at.
 *
 * @param plan - the plan to be run [record], with at least one pass
 * @param job - the job it was made for [record], a valid job
 * @param supply - what the supply's solution says [record], finite amounts, every lead on a way to the arc
 * @param options - instruments, stick-out and table of faults [record], figures >= 0
 * @returns the checks in order, or what in the supply cannot be worked with [list]
 * @source Ohm's law; sum of squares: JCGM 100:2008 (memory); uncertainties: stated in each check
 * @example
 * const loop = { ...electricOfKit(demoKit.kit).electric, arc: { holds: 'current', current: 600, voltage: 40 } };
 * const supply = commissionSupplyOf(demoKit.kit, 'electrode_positive', loop);
 * commissionChecks(demoAnswer.basis.plan, demoJob.job, supply).value[0].id // => "polarity"
 */
export function commissionChecks(
  plan: PlannedPasses,
  job: Job,
  supply: CommissionSupply,
  options: CommissionOptions = {},
): Outcome<readonly CommissionCheck[]> {
  const trial = trialPass(plan);
  const issues = [...supplyIssues(supply), ...optionIssues(options)];
  if (trial === undefined) {
    issues.push({
      code: 'COMMISSION_INPUT',
      message: 'The plan has no pass to set up for.',
      path: 'plan.passes',
    });
  }
  if (issues.length > 0 || trial === undefined) return { ok: false, issues };
  const points = pointVolts(supply, trial.current);
  if (!points.ok) return points;
  const input: CommissionInput = {
    plan,
    job,
    supply,
    trial,
    instruments: { ...USUAL_INSTRUMENTS, ...options.instruments },
    stickOut:
      options.stickOut === undefined
        ? USUAL_STICK_OUT
        : { value: options.stickOut, source: 'as stated by the shop' },
  };
  const drafts = [
    ...settingChecks(input),
    ...airChecks(input),
    ...motionChecks(input),
    ...noLoadChecks(input, points.value),
    plateCheck(input),
    ...trialArcChecks(input, points.value),
    lossWindowCheck(input),
  ];
  const faults = options.faults ?? FAULT_MODEL;
  return { ok: true, value: drafts.map((draft) => finishCheck(draft, faults)) };
}
