import type { ElectricLoop } from './electric-loop.ts';
import { jointResistance } from './joint-heat.ts';
import type { Lead } from './lead.ts';
import { type HeatModel, heatModelOf } from './lead-heat.ts';

/** A lead of the loop with the heat model of one of its conductors. */
export interface LeadRun {
  readonly lead: Lead;
  readonly model: HeatModel;
  /** Place of the source that alone feeds it; undefined for a lead of the whole current. */
  readonly branch?: number;
}

/** All leads of a loop: first those that the whole current passes, then each source's own. */
export function runsOf(
  loop: Pick<ElectricLoop, 'sources' | 'leads' | 'ambient'>,
  modelOf: (lead: Lead) => HeatModel = (lead) => heatModelOf(lead, loop.ambient),
): readonly LeadRun[] {
  const run = (lead: Lead): LeadRun => ({ lead, model: modelOf(lead) });
  return [
    ...loop.leads.map(run),
    ...loop.sources.flatMap(({ leads = [] }, branch) => leads.map((lead) => ({ ...run(lead), branch }))),
  ];
}

/** Resistance of a lead with its joints at a conductor temperature [ohm]. */
export function runResistance({ lead, model }: LeadRun, temperature: number): number {
  return (lead.length * model.resistanceAt(temperature)) / (lead.parallels ?? 1) + jointResistance(lead);
}
