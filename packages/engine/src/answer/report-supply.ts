import {
  type CommissionCheck,
  type Connection,
  commissionChecks,
  commissionSupplyOf,
  connectionSchedule,
} from '../commission/index.ts';
import type { Issue } from '../issue/index.ts';
import type { Job } from '../job/index.ts';
import { type ChosenPolarity, polarityOf, type ReadKit } from '../kit/index.ts';
import { type Candidate, type Limit, withSensitivity } from '../limit/index.ts';
import { metalOf } from '../material/index.ts';
import type { UnitSystem } from '../quantity/index.ts';
import type { RemovalBelief } from '../removal/index.ts';
import type { AirReport, Plan, SupplyReport } from '../result/index.ts';
import { passDuty } from '../supply/index.ts';
import type { KitLimits } from './kit-limits.ts';
import type { KitPlans } from './kit-plans.ts';
import { kitTime } from './kit-time.ts';
import { reportAir } from './report-air.ts';
import { reportElectric, type SolvedElectric } from './report-electric.ts';
import { reportPlace } from './report-place.ts';
import { candidateOfPlan, settingOf } from './setting-of-plan.ts';

/** What the report is made from. */
export interface SupplyInput {
  readonly read: ReadKit;
  readonly job: Job;
  readonly posterior: RemovalBelief;
  readonly limits: KitLimits;
  readonly plans: KitPlans;
  /** Units of what is told in words. */
  readonly system: UnitSystem;
}

/** What the kit makes of the plan told, or of the one that it fails. */
export function reportSupply(input: SupplyInput): SupplyReport {
  const { read, job, posterior, limits, plans } = input;
  const shown = plans.withKit ?? plans.withoutKit;
  const failed =
    plans.withoutKit === undefined ? [] : limitsAt(limits, candidateOfPlan(plans.withoutKit, job), job);
  const base = {
    kit: { title: read.kit.title, revision: read.revision, defaults_used: read.defaultsUsed },
    time: kitTime(plans, failed),
  };
  if (shown === undefined) {
    return {
      ...base,
      setting: null,
      polarity: null,
      limits: [],
      electric: null,
      air: null,
      place: null,
      connections: [],
      checks: [],
      issues: [],
      cautions: [],
    };
  }
  const candidate = candidateOfPlan(shown, job);
  const electric = reportElectric(read.kit, candidate, job, posterior);
  const air = reportAir(read.kit, passDuty(candidate, job), candidate.travel);
  const airReport = air.ok ? air.value : null;
  const place = placeOf(input, electric, airReport);
  const polarity = polarityOf(read, metalOf(job.plate.material, job.plate.composition));
  const commissioning = commissioningOf(input, polarity, plans.withKit, electric);
  return {
    ...base,
    setting: settingOf(candidate, shown, plans.withKit === undefined ? 'plan_without_kit' : 'plan'),
    polarity: { electrode: polarity.polarity, source: polarity.source },
    limits: plans.withKit === undefined ? failed : ownLimits(plans.withKit, limits, candidate, job),
    electric: electric.report,
    air: airReport,
    place: place.place,
    connections: commissioning.connections,
    checks: commissioning.checks,
    issues: [
      ...(polarity.issue === undefined ? [] : [polarity.issue]),
      ...(air.ok ? [] : air.issues),
      ...place.issues,
      ...commissioning.issues,
    ],
    cautions: [
      ...(electric.report.kind === 'operating_point' ? electric.report.cautions : []),
      ...(airReport?.cautions ?? []),
      ...(place.place?.cautions ?? []),
    ],
  };
}

/** Margins of the kit at a setting, with how each answers to it. */
function limitsAt({ functions }: KitLimits, candidate: Candidate, job: Job): readonly Limit[] {
  return functions.flatMap((check) => withSensitivity(check, candidate, job));
}

/** The kit's margins as they stand among the plan's limits. */
function ownLimits(plan: Plan, { functions }: KitLimits, candidate: Candidate, job: Job): readonly Limit[] {
  const own = new Set(functions.flatMap((check) => check(candidate, job).map(({ id }) => id)));
  return plan.limits.filter(({ id }) => own.has(id));
}

function placeOf(
  { read: { kit }, job, system }: SupplyInput,
  { solved }: SolvedElectric,
  air: AirReport | null,
): Pick<SupplyReport, 'place' | 'issues'> {
  if (kit.bay === undefined || solved === undefined || air === null) return { place: null, issues: [] };
  return reportPlace(kit, kit.bay, { job, solved, air, system });
}

interface Commissioning {
  readonly connections: readonly Connection[];
  readonly checks: readonly CommissionCheck[];
  readonly issues: readonly Issue[];
}

/** Connections wherever the loop works; checks only for a plan that may be run. */
function commissioningOf(
  { read, job, system }: SupplyInput,
  { polarity }: ChosenPolarity,
  plan: Plan | undefined,
  { loop, solved }: SolvedElectric,
): Commissioning {
  if (solved === undefined) return { connections: [], checks: [], issues: [] };
  const { kit } = read;
  const supply = commissionSupplyOf(kit, polarity, loop);
  const connections = connectionSchedule(supply, system);
  const checks =
    plan === undefined
      ? ({ ok: true, value: [] } as const)
      : commissionChecks(plan, job, supply, {
          system,
          ...(kit.stick_out !== undefined && { stickOut: kit.stick_out }),
        });
  return {
    connections: connections.ok ? connections.value : [],
    checks: checks.ok ? checks.value : [],
    // What keeps the schedule from being written keeps the checks from it too: told once.
    issues: connections.ok ? (checks.ok ? [] : checks.issues) : connections.issues,
  };
}
