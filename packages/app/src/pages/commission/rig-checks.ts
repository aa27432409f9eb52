import {
  type Answer,
  type CommissionCheck,
  type CommissionSupply,
  commissionChecks,
  type FaultModel,
  type FaultOutcome,
  faultsBehind,
  type ReadJob,
} from '@furrow/engine';

/** A supply of which nothing is known: what rests on a kit falls away. */
const NO_SUPPLY: Omit<CommissionSupply, 'setCurrent'> = {
  polarity: 'electrode_positive',
  holderPoint: 'electrode holder',
  platePoint: 'plate beside the groove',
  sources: [],
  items: [],
  airRuns: [],
  airPoints: [],
};

/** Checks that would tell of a supply although nothing is known of it. */
const NEEDS_KIT: ReadonlySet<string> = new Set(['polarity']);

/** The checks to make at the rig, with the faults behind them by this table; without a kit those that rest on the plan alone. */
export function rigChecks(
  { read, answer }: { readonly read: ReadJob; readonly answer: Answer },
  faults: FaultModel,
): readonly CommissionCheck[] {
  if (answer.supply !== undefined) return answer.supply.checks.map((check) => withFaults(check, faults));
  const plan = answer.basis?.plan;
  if (plan === undefined) return [];
  const setCurrent = Math.max(...plan.passes.map(({ current }) => current));
  const outcome = commissionChecks(plan, read.job, { ...NO_SUPPLY, setCurrent }, { faults });
  if (!outcome.ok) return [];
  return outcome.value.filter(({ id, stage }) => stage !== 'no_load' && !NEEDS_KIT.has(id));
}

/** A check with the faults behind it by another table. */
function withFaults(check: CommissionCheck, model: FaultModel): CommissionCheck {
  const behind = (outcome: FaultOutcome) =>
    check.evidence === null ? [] : faultsBehind(model, check.evidence, outcome);
  return check.kind === 'confirm'
    ? { ...check, unmet: behind('yes') }
    : { ...check, below: behind('low'), above: behind('high') };
}
