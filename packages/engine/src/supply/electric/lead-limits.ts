import { type Limit, limitOf, type Source } from '../../limit/index.ts';
import type { DutyInterval } from '../duty/index.ts';
import { RISE_FACTOR } from './joint-heat.ts';
import type { Lead } from './lead.ts';
import type { HeatModel } from './lead-heat.ts';
import type { LeadState, WorkingLoop } from './loop-result.ts';
import type { LeadRun } from './loop-runs.ts';
import { temperatureRemedy } from './temperature-remedy.ts';

const STATED: Source = {
  text: 'the insulation limit in the kit; lead heating within about 15 % in current',
  provenance: 'job file',
};
const USUAL: Source = {
  text: 'rubber-covered leads, 85 °C at the conductor; lead heating within about 15 % in current',
  provenance: 'memory',
};

/** How hot the leads and their joints get in the duty against what the insulation stands. */
export function leadLimits(
  runs: readonly LeadRun[],
  solved: WorkingLoop,
  duty: readonly DutyInterval[],
  modelOf: (lead: Lead) => HeatModel,
): readonly Limit[] {
  if (solved.leads.length === 0) return [];
  return [temperatureLimit(runs, solved, duty, modelOf), ...jointLimit(solved.leads)];
}

/** The lead with the least room below its limit, in kelvin. */
function temperatureLimit(
  runs: readonly LeadRun[],
  { leads }: WorkingLoop,
  duty: readonly DutyInterval[],
  modelOf: (lead: Lead) => HeatModel,
): Limit {
  const room = (lead: LeadState): number => lead.insulation_limit_K - lead.temperature_K;
  const place = leads.reduce((least, lead, i) => (room(lead) < room(leads[least]!) ? i : least), 0);
  const lead = leads[place]!;
  const stated = lead.insulation_limit_provenance === 'job file';
  const fails = room(lead) < 0;
  return limitOf({
    id: 'lead_temperature',
    title: `Temperature of the lead "${lead.name}"`,
    demand: lead.temperature_K,
    capacity: lead.insulation_limit_K,
    unit: 'degC',
    sense: 'most',
    hard: stated,
    source: stated ? STATED : USUAL,
    remedy: fails
      ? temperatureRemedy(runs[place]!, lead.current_A, duty, lead.insulation_limit_K, modelOf)
      : 'more conductors side by side, or a larger size',
  });
}

/** The hottest joint, by the lower end of what is estimated: it fails only where it surely is too hot, and turns no plan away. */
function jointLimit(leads: readonly LeadState[]): readonly Limit[] {
  const joints = leads.flatMap((lead) =>
    lead.joints.flatMap(({ name, rise_K, heat_W }) =>
      rise_K === undefined
        ? []
        : [{ lead, name, heat_W, temperature: lead.temperature_K + rise_K / RISE_FACTOR }],
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
      remedy: `clean and tighten the joint: it makes ${Math.round(worst.heat_W)} W`,
    }),
  ];
}
