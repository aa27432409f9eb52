import {
  commissionChecks,
  commissionSupplyOf,
  connectionSchedule,
  turningOf,
} from '../../commission/index.ts';
import type { Issue, Outcome } from '../../issue/index.ts';
import type { Job } from '../../job/index.ts';
import {
  airOfKit,
  bayOfJob,
  type ChosenPolarity,
  electricOfKit,
  hosesOfKit,
  type Kit,
  type KitLimits,
  kitTime,
  placeOfKit,
  polarityOf,
  type ReadKit,
  wantedPressures,
} from '../../kit/index.ts';
import { type Candidate, type Limit, withSensitivity } from '../../limit/index.ts';
import { metalOf } from '../../material/index.ts';
import { heaviestPass, type PlanOutcome } from '../../plan/index.ts';
import type { RemovalBelief } from '../../removal/index.ts';
import type { SettingOutcome, SupplyOutcome } from '../../result/index.ts';
import {
  airThroughDuty,
  type ElectricLoop,
  type LoopResult,
  passDuty,
  senseLandings,
  solveLoop,
} from '../../supply/index.ts';

/** The plan with the kit's margins and by the process alone; undefined where there is none. */
export interface PlansOfKit {
  readonly withKit: PlanOutcome | undefined;
  readonly withoutKit: PlanOutcome | undefined;
}

/** What the supply is worked out from. */
export interface SupplyInput {
  readonly read: ReadKit;
  readonly job: Job;
  readonly posterior: RemovalBelief;
  readonly limits: KitLimits;
  readonly plans: PlansOfKit;
}

/** What the kit makes of the plan told, or of the one that it fails. */
export function answerSupply(input: SupplyInput): SupplyOutcome {
  const { read, job, limits } = input;
  const { withKit, withoutKit } = input.plans;
  const failed = withoutKit === undefined ? [] : limitsAt(limits, heaviestPass(withoutKit), job);
  const time = kitTime(withKit?.jobTime.p50, withoutKit?.jobTime.p50, failed);
  const shown = withKit ?? withoutKit;
  return { kit: read, time, setting: shown && settingOf(input, shown, failed) };
}

function settingOf(input: SupplyInput, shown: PlanOutcome, failed: readonly Limit[]): SettingOutcome {
  const { read, job, posterior, limits, plans } = input;
  const { kit } = read;
  const candidate = heaviestPass(shown);
  const duty = passDuty(candidate, job);
  const { loop, solved } = electricAt(kit, candidate, duty);
  const landings =
    solved.kind === 'operating_point'
      ? senseLandings(loop, solved, { candidate, job, belief: posterior })
      : [];
  const air = airThroughDuty(airOfKit(kit), wantedPressures(kit), duty, hosesOfKit(kit));
  const place =
    solved.kind === 'operating_point' && air.ok ? placeOfKit(kit, job, solved, air.value.point) : undefined;
  const polarity = polarityOf(read, metalOf(job.plate.material, job.plate.composition));
  const commissioning = commissioningOf(input, polarity, loop, solved);
  return {
    of: plans.withKit === undefined ? 'plan_without_kit' : 'plan',
    candidate,
    passes: shown.passes.length,
    polarity,
    limits: plans.withKit === undefined ? failed : ownLimits(plans.withKit, limits, candidate, job),
    loop,
    solved,
    landings,
    air: air.ok ? air.value : undefined,
    place,
    turning: turningOfGirth(shown.passes[0]?.travel, job, kit),
    connections: commissioning.connections,
    checks: commissioning.checks,
    issues: [
      ...(polarity.issue === undefined ? [] : [polarity.issue]),
      ...issuesOf(air),
      ...bayIssues(kit, job),
      ...(place?.issues ?? []),
      ...commissioning.issues,
    ],
  };
}

/** How a girth turns at a travel; undefined for a straight seam. */
function turningOfGirth(
  travel: number | undefined,
  { seam }: Job,
  { turning_roll: roll }: Kit,
): SettingOutcome['turning'] {
  if (travel === undefined || seam.path !== 'girth' || seam.diameter === undefined) return undefined;
  return { travel, rollDiameter: roll, ...turningOf(travel, seam.diameter, roll) };
}

/** A bay that the job names and the kit does not have. */
function bayIssues(kit: Kit, job: Job): readonly Issue[] {
  const { bay } = job.site;
  if (bay === undefined || bayOfJob(kit, job) !== undefined) return [];
  const known =
    kit.bay?.name === undefined ? 'The kit names no bay' : `The bay of the kit is “${kit.bay.name}”`;
  return [
    {
      code: 'JOB_COMBINATION',
      path: 'site.bay',
      read: bay,
      message: `${known}, the job’s is “${bay}”: the station is not placed.`,
    },
  ];
}

function electricAt(
  kit: Kit,
  { current, voltage }: Candidate,
  duty: ReturnType<typeof passDuty>,
): { readonly loop: ElectricLoop; readonly solved: LoopResult } {
  const loop: ElectricLoop = {
    ...electricOfKit(kit).electric,
    arc: { holds: 'current', current, voltage },
    duty,
  };
  const solved = solveLoop(loop);
  if (!solved.ok) throw new Error(`a kit that was read cannot be solved: ${solved.issues[0]?.message}`);
  return { loop, solved: solved.value };
}

/** Margins of the kit at a setting, with how each answers to it. */
function limitsAt({ functions }: KitLimits, candidate: Candidate, job: Job): readonly Limit[] {
  return functions.flatMap((check) => withSensitivity(check, candidate, job));
}

/** The kit's margins as they stand among the plan's limits. */
function ownLimits(
  plan: PlanOutcome,
  { functions }: KitLimits,
  candidate: Candidate,
  job: Job,
): readonly Limit[] {
  const own = new Set(functions.flatMap((check) => check(candidate, job).map(({ id }) => id)));
  return plan.limits.filter(({ id }) => own.has(id));
}

/** Connections wherever the loop works; checks only for a plan that may be run. */
function commissioningOf(
  { read: { kit }, job, plans: { withKit } }: SupplyInput,
  { polarity }: ChosenPolarity,
  loop: ElectricLoop,
  solved: LoopResult,
): Pick<SettingOutcome, 'connections' | 'checks' | 'issues'> {
  if (solved.kind === 'no_operating_point') return { connections: [], checks: [], issues: [] };
  const supply = commissionSupplyOf(kit, polarity, loop);
  const connections = connectionSchedule(supply);
  // What keeps the schedule from being written keeps the checks from it too: told once.
  if (!connections.ok) return { connections: [], checks: [], issues: connections.issues };
  if (withKit === undefined) return { connections: connections.value, checks: [], issues: [] };
  const checks = commissionChecks(
    withKit,
    job,
    supply,
    kit.stick_out === undefined ? {} : { stickOut: kit.stick_out },
  );
  return {
    connections: connections.value,
    checks: checks.ok ? checks.value : [],
    issues: issuesOf(checks),
  };
}

function issuesOf(outcome: Outcome<unknown>): SettingOutcome['issues'] {
  return outcome.ok ? [] : outcome.issues;
}
