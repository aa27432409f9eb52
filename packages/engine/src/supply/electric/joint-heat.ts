import { COPPER_CONDUCTIVITY } from './copper.ts';
import type { Lead, LeadJoint } from './lead.ts';
import type { HeatModel } from './lead-heat.ts';

/** What a joint does at a current. */
export interface JointState {
  readonly name: string;
  /** Volts across it [V]. */
  readonly drop_V: number;
  /** Heat it makes [W]. */
  readonly heat_W: number;
  /** How much hotter it gets than the lead beside it, within a factor of two [K]; undefined where the lead has no steady state. */
  readonly rise_K?: number;
}

/** Heat that the bare metal of a joint gives off by convection and radiation; judgement, no source [W/(m2 K)]. */
const SURFACE_LOSS = 10;
/** Surface of a lug with what it is bolted to, and of a clamp, holder or terminal that the whole run meets; judgement, no source [m2]. */
const SURFACES = { conductor: 0.01, run: 0.04 } as const;
/** The estimate of a joint's rise is good within this factor [-]. */
export const RISE_FACTOR = 2;

/** Resistance of a lead's joints as its whole current meets them [ohm]. */
export function jointResistance(lead: Pick<Lead, 'joints' | 'parallels'>): number {
  return (lead.joints ?? []).reduce((sum, joint) => sum + seenResistance(joint, lead), 0);
}

/** Joints in every conductor lie side by side [ohm]. */
export function seenResistance(joint: LeadJoint, lead: Pick<Lead, 'parallels'>): number {
  return joint.carries === 'conductor' ? joint.resistance / (lead.parallels ?? 1) : joint.resistance;
}

/**
 * Volts, watts and temperature rise of one joint of a lead.
 *
 * The joint's heat leaves along the copper as along a fin, sqrt(k A G') per conductor and side, where G' is the growth
 * of the lead's loss less that of its own heat with temperature, and off the surface of lug, clamp or holder (100 or
 * 400 cm2 at 10 W/(m2 K), judgement). The rise is good within a factor of two; it holds for leads much longer than
 * sqrt(k A / G'), about a quarter of a metre.
 *
 * @param joint - the joint [record], a checked one
 * @param lead - the lead it sits in [record], a checked lead
 * @param model - the heat model of one of its conductors [record], as for the lead
 * @param current - whole current of the lead [A], >= 0
 * @param temperature - conductor temperature of the lead [K], ambient to 473
 * @returns what the joint does; of one of them where every conductor has one [record]
 * @source derived: fin of infinite length; surface: judgement, no source
 * @example
 * const heat = linearHeatModel({ resistance_20: 0.000206, conductance: 0.736027738, capacity: 451.610849, ambient: 313.15 });
 * jointState({ name: 'clamp', resistance: 0.0001, at: 'end' }, { name: 'x', side: 'work', area: 95e-6, length: 10 }, heat, 500, 350).heat_W // => 25
 */
export function jointState(
  joint: LeadJoint,
  lead: Lead,
  model: HeatModel,
  current: number,
  temperature: number,
): JointState {
  const parallels = lead.parallels ?? 1;
  const each = joint.carries === 'conductor';
  const own = each ? current / parallels : current;
  const heat_W = own ** 2 * joint.resistance;
  const state = { name: joint.name, drop_V: own * joint.resistance, heat_W };
  const step = 2;
  const growth = (model.lossAt(temperature + step) - model.lossAt(temperature)) / step;
  const net = growth - (current / parallels) ** 2 * model.resistanceSlope;
  if (!(net > 0)) return state;
  const paths = (each ? 1 : parallels) * (joint.at === 'middle' ? 2 : 1);
  const conductance = paths * Math.sqrt(COPPER_CONDUCTIVITY * lead.area * net);
  return { ...state, rise_K: heat_W / (conductance + SURFACE_LOSS * SURFACES[joint.carries ?? 'run']) };
}
