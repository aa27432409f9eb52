import {
  type Answer,
  type CheckReport,
  type CommissionCheck,
  type CommissionStage,
  type CommissionSupply,
  commissionChecks,
  type FaultModel,
  type FaultOutcome,
  faultsBehind,
  READING_UNITS,
  type ReadJob,
  type UnitSystem,
} from '@furrow/engine';

const STAGES: Readonly<Record<CheckReport['stage'], CommissionStage>> = {
  'before power': 'power_off',
  air: 'air_on',
  motion: 'dry_run',
  'no load': 'no_load',
  'with arc': 'trial_arc',
};

/** A supply of which nothing is known: what rests on a kit falls away. */
const NO_SUPPLY: Omit<CommissionSupply, 'setCurrent'> = {
  polarity: 'electrode_positive',
  holderPoint: 'the electrode holder',
  platePoint: 'the plate beside the groove',
  sources: [],
  items: [],
  airRuns: [],
  airPoints: [],
};

/** Farther than any meter reads, for a band without an end, in any unit [see unit]. */
export const BEYOND = 1e9;

/** Checks that would tell of a supply although nothing is known of it. */
const NEEDS_KIT: ReadonlySet<string> = new Set(['polarity']);

/** The checks to make at the rig; without a kit those that rest on the plan alone. */
export function rigChecks(
  { read, answer }: { readonly read: ReadJob; readonly answer: Answer },
  faults: FaultModel,
  system: UnitSystem,
): readonly CommissionCheck[] {
  if (answer.supply !== undefined) return answer.supply.checks.map((check) => checkOf(check, faults));
  const { plan } = answer;
  if (plan === undefined) return [];
  const setCurrent = Math.max(...plan.passes.map(({ current_A }) => current_A));
  const outcome = commissionChecks(plan, read.job, { ...NO_SUPPLY, setCurrent }, { system, faults });
  if (!outcome.ok) return [];
  return outcome.value.filter(({ id, stage }) => stage !== 'no_load' && !NEEDS_KIT.has(id));
}

/** A check of the report with the faults behind it, by the shop's own table. */
export function checkOf(check: CheckReport, model: FaultModel): CommissionCheck {
  const { id, title, how, caution, why, expect, observable, hints } = check;
  const facts = {
    id,
    stage: STAGES[check.stage],
    title,
    ask: how,
    caution,
    why,
    evidence: observable,
    hints,
  };
  const behind = (outcome: FaultOutcome) =>
    observable === null ? [] : faultsBehind(model, observable, outcome);
  if (expect === null) return { ...facts, kind: 'confirm', unmet: behind('yes') };
  return {
    ...facts,
    kind: 'measure',
    quantity: READING_UNITS[expect.unit].quantity,
    unit: expect.unit,
    expected: expect.value,
    least: expect.least ?? -BEYOND,
    most: expect.most ?? BEYOND,
    parts: [],
    below: behind('low'),
    above: behind('high'),
  };
}
