import type { Outcome } from '../../issue/index.ts';
import type { Job } from '../../job/index.ts';
import type { Candidate, Limit, LimitFunction } from '../../limit/index.ts';
import { type DutyInterval, passDuty } from '../duty/index.ts';
import { kitIssues } from './check-loop.ts';
import type { ElectricSetting } from './electric-change.ts';
import type { ElectricLoop } from './electric-loop.ts';
import { remediesOf } from './electric-remedy.ts';
import type { Lead } from './lead.ts';
import { type HeatModel, heatModelOf } from './lead-heat.ts';
import { leadLimits } from './lead-limits.ts';
import { runsOf } from './loop-runs.ts';
import { solveChecked } from './solve-loop.ts';
import { loadLimits, unreachable, voltageLimit } from './source-limits.ts';

/** What a kit has for the electric loop. */
export interface ElectricKit extends Pick<ElectricLoop, 'sources' | 'leads' | 'ambient'> {
  /** Arc on and off for a setting; passes, returns and starts of the job if not stated. */
  readonly duty?: (candidate: Candidate, job: Job) => readonly DutyInterval[];
}

/** Candidates whose limits are kept, so that none is worked out twice in a row [-]. */
const REMEMBERED_MOST = 500;

/**
 * Limits that sources and leads of a kit put on a setting.
 *
 * The candidate's current is held and its arc voltage wanted; the leads are as hot as the duty of its passes makes
 * them. Voltage, rated current, minutes in ten and, where the kit states the insulation's limit, lead temperature
 * are hard; what rests on memory or on an upper estimate is soft. Each remedy is a single change, the least of its kind,
 * tried before it is named.
 *
 * @param kit - sources, leads, ambient and, where it is known better, the duty [record], any
 * @returns the limit function, or the issues of the kit [record]
 * @source Ohm's law; rating rule of IEC 60974-1 (confirmed); lead heating derived (15 % in current)
 * @example
 * electricLimits({ sources: [], leads: [], ambient: 303.15 }).issues[0].code // => "ELECTRIC_VALUE"
 */
export function electricLimits(kit: ElectricKit): Outcome<LimitFunction> {
  const issues = kitIssues(kit);
  if (issues.length > 0) return { ok: false, issues };
  const dutyOf = kit.duty ?? passDuty;
  const modelOf = rememberedModels(kit.ambient);
  const limitsAt = (setting: ElectricSetting): readonly Limit[] => {
    const { current, voltage } = setting;
    const loop: ElectricLoop = { ...setting, arc: { holds: 'current', current, voltage } };
    const solved = solveChecked(loop, new Set(), runsOf(setting, modelOf));
    const remedies = remediesOf(setting, limitsAt);
    return solved.kind === 'no_operating_point'
      ? [unreachable(voltage, solved, remedies)]
      : [
          voltageLimit(solved, remedies),
          ...loadLimits(setting, solved, remedies),
          ...leadLimits(solved, remedies),
        ];
  };
  const known = new Map<string, readonly Limit[]>();
  return {
    ok: true,
    value: (candidate, job) => {
      const duty = dutyOf(candidate, job);
      // Candidates often differ in what this room does not look at.
      const key = [
        candidate.current,
        candidate.voltage,
        ...duty.map(({ arc, duration }) => `${arc} ${duration}`),
      ].join(' ');
      const found = known.get(key);
      if (found) return found;
      const { current, voltage } = candidate;
      const limits = limitsAt({ ...kit, current, voltage, duty });
      if (known.size >= REMEMBERED_MOST) known.clear();
      known.set(key, limits);
      return limits;
    },
  };
}

/** Heat models of the kit's leads and of those that remedies try, each built once. */
function rememberedModels(ambient: number): (lead: Lead) => HeatModel {
  const models = new Map<string, HeatModel>();
  return (lead) => {
    const { area, metal, covering, resistance } = lead;
    const key = JSON.stringify([area, metal, covering, resistance]);
    const model = models.get(key) ?? heatModelOf(lead, ambient);
    models.set(key, model);
    return model;
  };
}
