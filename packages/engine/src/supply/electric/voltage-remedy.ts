import { bisect } from '../../numeric/index.ts';
import { conductorOf } from './conductor.ts';
import { nextSize } from './conductor-size.ts';
import type { ElectricLoop } from './electric-loop.ts';
import type { Lead } from './lead.ts';
import type { WorkingLoop } from './loop-result.ts';
import type { LeadRun } from './loop-runs.ts';
import { resized } from './resized-lead.ts';
import { dropOf, fixedTemperatures, workingPoint } from './working-point.ts';

const MOST_PARALLELS = 20;

/** A change of one lead and the volts it saves. */
interface Change {
  readonly says: string;
  readonly saves: number;
  /** Conductors added. */
  readonly added: number;
}

/**
 * The least changes that each bring the voltage needed down to what there is, in words. Leads are taken to stay as
 * warm as they are: more copper runs cooler, so the real gain is rather larger.
 */
export function voltageRemedy(loop: ElectricLoop, runs: readonly LeadRun[], solved: WorkingLoop): string {
  const lacking = -solved.margin_V;
  if (!(lacking > 0)) return 'shorter or thicker leads, or less current';
  const whole = runs.flatMap((run, i) =>
    run.branch === undefined ? [{ run, temperature: solved.leads[i]!.temperature_K }] : [],
  );
  const changes = (of: typeof leastParallels): Change[] =>
    whole.flatMap(({ run, temperature }) => of(run, temperature, solved.current_A, lacking) ?? []);
  const mended = [changes(leastParallels), changes(nextUp)].flatMap(
    (ways) => ways.toSorted((a, b) => a.added - b.added || b.saves - a.saves)[0]?.says ?? [],
  );
  const stronger = `a source that gives ${lacking.toFixed(1)} V more at ${Math.round(solved.current_A)} A, or another one beside it`;
  const most = greatestCurrent(loop, runs, solved);
  const less = most === undefined ? [] : [`run at no more than ${Math.floor(most)} A`];
  return [...(mended.length > 0 ? mended : [stronger]), ...less].join(', or ');
}

function leastParallels(
  run: LeadRun,
  temperature: number,
  current: number,
  lacking: number,
): Change | undefined {
  const { lead } = run;
  const now = lead.parallels ?? 1;
  for (let parallels = now + 1; parallels <= MOST_PARALLELS; parallels += 1) {
    const saves = saving(run, { ...lead, parallels }, temperature, current);
    if (saves >= lacking)
      return { added: parallels - now, saves, says: layText(lead, parallels, nameOf(lead)) };
  }
  return undefined;
}

function nextUp(run: LeadRun, temperature: number, current: number, lacking: number): Change | undefined {
  const { lead } = run;
  const size = nextSize(conductorOf(lead).size);
  if (!size) return undefined;
  const saves = saving(run, resized(lead, size), temperature, current);
  return saves >= lacking
    ? { added: 0, saves, says: layText(lead, lead.parallels ?? 1, size.name) }
    : undefined;
}

/** Volts that one lead in the place of another saves [V]. */
function saving(run: LeadRun, other: Lead, temperature: number, current: number): number {
  const drop = (lead: Lead): number => {
    const model = { ...run.model, resistanceAt: conductorOf(lead).resistanceAt };
    return dropOf([{ lead, model }], () => true, fixedTemperatures([temperature]), current);
  };
  return drop(run.lead) - drop(other);
}

function nameOf(lead: Lead): string {
  return conductorOf(lead).size.name;
}

/** How a lead is to be laid, in words. */
export function layText(lead: Lead, parallels: number, size: string): string {
  return `lay the lead "${lead.name}" as ${parallels} x ${size}`;
}

/** Greatest current that the sources can still drive through arc and leads as warm as they are [A]. */
function greatestCurrent(
  loop: ElectricLoop,
  runs: readonly LeadRun[],
  solved: WorkingLoop,
): number | undefined {
  const { arc } = loop;
  if (arc.holds !== 'current' || arc.voltage === undefined) return undefined;
  const wanted = arc.voltage;
  const temperature = fixedTemperatures(solved.leads.map((lead) => lead.temperature_K));
  const margin = (current: number): number => {
    const point = workingPoint({ ...loop, arc: { holds: 'current', current } }, runs, temperature);
    return (
      (point?.voltage ?? 0) - wanted - dropOf(runs, (run) => run.branch === undefined, temperature, current)
    );
  };
  return bisect(margin, 1, solved.current_A, 0.01);
}
