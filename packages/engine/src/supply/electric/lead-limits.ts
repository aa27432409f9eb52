import { type Limit, limitOf, type Source } from '../../limit/index.ts';
import { LARGER_SIZE, LESS_CURRENT, LONGER_PAUSES, MORE_PARALLELS, soundJoint } from './electric-change.ts';
import type { Remedies } from './electric-remedy.ts';
import { RISE_FACTOR } from './joint-heat.ts';
import type { LeadState, WorkingLoop } from './loop-result.ts';

const STATED: Source = {
  text: 'the insulation limit in the kit; lead heating within about 15 % in current',
  provenance: 'job file',
};
const USUAL: Source = {
  text: 'rubber-covered leads, 85 °C at the conductor; lead heating within about 15 % in current',
  provenance: 'memory',
};

/** How hot the leads and their joints get in the duty against what the insulation stands. */
export function leadLimits(solved: WorkingLoop, remedies: Remedies): readonly Limit[] {
  if (solved.leads.length === 0) return [];
  return [temperatureLimit(solved, remedies), ...jointLimit(solved.leads, remedies)];
}

/** The lead with the least room below its limit, in kelvin. */
function temperatureLimit({ leads }: WorkingLoop, remedies: Remedies): Limit {
  const room = (lead: LeadState): number => lead.insulation_limit_K - lead.temperature_K;
  const place = leads.reduce((least, lead, i) => (room(lead) < room(leads[least]!) ? i : least), 0);
  const lead = leads[place]!;
  const stated = lead.insulation_limit_provenance === 'job file';
  return limitOf({
    id: 'lead_temperature',
    title: `Temperature of the lead "${lead.name}"`,
    demand: lead.temperature_K,
    capacity: lead.insulation_limit_K,
    unit: 'degC',
    sense: 'most',
    hard: stated,
    source: stated ? STATED : USUAL,
    remedy: remedies('lead_temperature', [MORE_PARALLELS, LARGER_SIZE, LESS_CURRENT, LONGER_PAUSES]),
  });
}

/** The hottest joint, by the lower end of what is estimated: it fails only where it surely is too hot, and turns no plan away. */
function jointLimit(leads: readonly LeadState[], remedies: Remedies): readonly Limit[] {
  const joints = leads.flatMap((lead) =>
    lead.joints.flatMap(({ name, rise_K, heat_W, drop_V }) =>
      rise_K === undefined
        ? []
        : [{ lead, name, heat_W, drop_V, temperature: lead.temperature_K + rise_K / RISE_FACTOR }],
    ),
  );
  if (joints.length === 0) return [];
  const worst = joints.reduce((most, joint) =>
    joint.temperature - joint.lead.insulation_limit_K > most.temperature - most.lead.insulation_limit_K
      ? joint
      : most,
  );
  return [
    limitOf({
      id: 'joint_temperature',
      title: `Temperature of the joint "${worst.name}", at least`,
      demand: worst.temperature,
      capacity: worst.lead.insulation_limit_K,
      unit: 'degC',
      sense: 'most',
      hard: false,
      source: {
        text: 'heat of the joint along the copper beside it and off its surface, lower end of an estimate within a factor of two',
        provenance: 'derived',
      },
      remedy: remedies('joint_temperature', [soundJoint(worst.name, worst)]),
    }),
  ];
}
