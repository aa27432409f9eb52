import { ZERO_CELSIUS } from '../../quantity/index.ts';
import { conductorOf } from './conductor.ts';

import { jointState, RISE_FACTOR, seenResistance } from './joint-heat.ts';
import type { Lead } from './lead.ts';
import {
  firstReached,
  leadTimeConstant,
  type TemperatureCourse,
  timeToTemperature,
} from './lead-temperature.ts';
import type { LeadState, LoopLoss } from './loop-result.ts';
import { type LeadRun, runResistance } from './loop-runs.ts';
import { steadyTemperature } from './steady-temperature.ts';

/** Limit of rubber-covered leads where the kit states none (memory) [K]. */
const USUAL_LIMIT = ZERO_CELSIUS + 85;

/** The limit of a lead's insulation and how far it can be trusted. */
function insulationLimit(lead: Lead): Pick<LeadState, 'insulation_limit_K' | 'insulation_limit_provenance'> {
  return lead.insulation_limit === undefined
    ? { insulation_limit_K: USUAL_LIMIT, insulation_limit_provenance: 'memory' }
    : { insulation_limit_K: lead.insulation_limit, insulation_limit_provenance: 'job file' };
}

/** A run at the working point, with its course through the duty if there was one. */
export function leadState(
  run: LeadRun,
  source: string | undefined,
  current: number,
  temperature: number,
  course: TemperatureCourse | undefined,
): LeadState {
  const { lead, model } = run;
  const parallels = lead.parallels ?? 1;
  const limit = insulationLimit(lead);
  const resistance = runResistance(run, temperature);
  const timeToLimit = timeToTemperature(model, current / parallels, limit.insulation_limit_K);
  return {
    name: lead.name,
    side: lead.side,
    ...(source !== undefined && { source }),
    size: conductorOf(lead).size.name,
    parallels,
    current_A: current,
    resistance_ohm: resistance,
    drop_V: current * resistance,
    temperature_K: temperature,
    steady: steadyTemperature(model, current / parallels),
    time_constant_s: leadTimeConstant(model, limit.insulation_limit_K),
    ...limit,
    ...(timeToLimit !== undefined && { time_to_limit_s: timeToLimit }),
    ...(course && { duty: dutyOf(course, limit.insulation_limit_K) }),
    joints: (lead.joints ?? []).map((joint) => {
      const state = jointState(joint, lead, model, current, temperature);
      // The rise goes with the resistance.
      const room = RISE_FACTOR * Math.max(0, limit.insulation_limit_K - temperature);
      const perOhm = (state.rise_K ?? 0) / joint.resistance;
      return { ...state, resistanceMost: perOhm > 0 ? room / perOhm : undefined };
    }),
  };
}

function dutyOf(course: TemperatureCourse, limit: number): NonNullable<LeadState['duty']> {
  const reached = firstReached(course, limit);
  return { ...course, ...(reached !== undefined && { limit_s: reached }) };
}

/** The heat of a run, its copper first and then joint by joint. */
export function lossesOf(
  { lead, model }: LeadRun,
  current: number,
  temperature: number,
): readonly LoopLoss[] {
  const copper = (lead.length * model.resistanceAt(temperature)) / (lead.parallels ?? 1);
  return [
    { lead: lead.name, drop_V: current * copper, loss_W: current ** 2 * copper },
    ...(lead.joints ?? []).map((joint) => {
      const resistance = seenResistance(joint, lead);
      return {
        lead: lead.name,
        joint: joint.name,
        drop_V: current * resistance,
        loss_W: current ** 2 * resistance,
      };
    }),
  ];
}
