import type { DutyInterval } from '../duty/index.ts';
import { conductorOf } from './conductor.ts';
import { nextSize } from './conductor-size.ts';
import type { Lead } from './lead.ts';
import type { HeatModel } from './lead-heat.ts';
import { leadTemperatures } from './lead-temperature.ts';
import type { LeadRun } from './loop-runs.ts';
import { resized } from './resized-lead.ts';
import { layText } from './voltage-remedy.ts';

const MOST_PARALLELS = 20;

/**
 * The fewest conductors, and the least size, that keep a lead within its insulation's limit, in words. `modelOf` gives
 * the heat model of another lead around the same ambient.
 */
export function temperatureRemedy(
  { lead, model }: LeadRun,
  current: number,
  duty: readonly DutyInterval[],
  limit: number,
  modelOf: (lead: Lead) => HeatModel,
): string {
  const peak = (own: typeof model, parallels: number): number =>
    leadTemperatures([own], () => [current / parallels], duty)[0]!.peak_K;
  const now = lead.parallels ?? 1;
  const ways: string[] = [];
  for (let parallels = now + 1; parallels <= MOST_PARALLELS && ways.length === 0; parallels += 1) {
    if (peak(model, parallels) <= limit) ways.push(layText(lead, parallels, conductorOf(lead).size.name));
  }
  const larger = largerSize(lead, (other) => peak(modelOf(other), now) <= limit);
  if (larger !== undefined) ways.push(layText(lead, now, larger));
  return ways.length > 0 ? ways.join(', or ') : 'less current, or longer pauses between passes';
}

function largerSize(lead: Lead, holds: (other: Lead) => boolean): string | undefined {
  let size = nextSize(conductorOf(lead).size);
  while (size && !holds(resized(lead, size))) size = nextSize(size);
  return size?.name;
}
