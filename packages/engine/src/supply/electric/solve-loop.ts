import type { Outcome } from '../../issue/index.ts';
import { ZERO_CELSIUS } from '../../quantity/index.ts';
import { lineOf } from './characteristic.ts';
import { loopIssues } from './check-loop.ts';

import { arcMinutesInTen } from './duty.ts';
import type { ElectricLoop } from './electric-loop.ts';
import { inputPower } from './input-power.ts';
import type { Agreement } from './joined-sources.ts';
import { leadState, lossesOf } from './lead-state.ts';
import type { TemperatureCourse } from './lead-temperature.ts';
import type { LeadState, LoopResult, NoWorkingLoop, SourceState, WorkingLoop } from './loop-result.ts';
import { type LeadRun, runsOf } from './loop-runs.ts';
import { coursesOf, runCurrents } from './loop-temperatures.ts';
import { permissibleMinutes, ratedMaximum } from './rating.ts';
import {
  dropOf,
  fixedTemperatures,
  type RunTemperature,
  steadyTemperatures,
  workingPoint,
} from './working-point.ts';

/**
 * Where power sources, leads and arc agree, and what that does to each of them.
 *
 * Sources in parallel share by their curves behind their own leads; rectifiers pass one way, so one that would be
 * driven backwards gives nothing. The leads are as hot as the current makes them: in the duty stated (its
 * peak), else settled under an arc that never stops. Every search is bracketed. With the current held, the
 * sources are taken as set down until the arc has the voltage wanted, and `available_V` is what they give at
 * full setting.
 *
 * @param loop - sources, leads, arc, ambient and duty [record], any
 * @returns the working point, or that there is none and why, or the issues of what was stated [record]
 * @source Ohm's law; IEC 60228 and NEC resistances; duty after IEC 60974-1; lead heating derived (15 % in current)
 * @example
 * const plant = { name: 'A', characteristic: { kind: 'drooping', no_load_voltage: 80, slope: 0.02 }, rating: [{ current: 1000, duty: 0.6 }] };
 * const run = { side: 'electrode', area: 95e-6, parallels: 2, length: 30 };
 * const leads = [{ ...run, name: 'electrode lead' }, { ...run, name: 'work return', side: 'work' }];
 * const solved = solveLoop({ sources: [{ source: plant }], leads, arc: { holds: 'current', current: 1000, voltage: 45 }, ambient: 303.15, lead_temperature: 333.15 });
 * solved.value.needed_V // => 52.151496
 * solved.value.sources[0].permissible_minutes // => 6
 */
export function solveLoop(loop: ElectricLoop): Outcome<LoopResult> {
  const issues = loopIssues(loop);
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: solveChecked(loop, new Set()) };
}

/** Solves a checked loop; the drop of the leads in `sensed` lies inside the voltage that the feed holds. */
export function solveChecked(
  loop: ElectricLoop,
  sensed: ReadonlySet<string>,
  runs: readonly LeadRun[] = runsOf(loop),
): LoopResult {
  const cold = workingPoint(loop, runs, fixedTemperatures(runs.map(() => loop.ambient)), sensed);
  if (!cold) return noPoint(loop);
  const courses = loop.duty && coursesOf(loop, runs, loop.duty, cold, sensed);
  const temperature = temperatureOf(loop, runs, courses);
  const point = workingPoint(loop, runs, temperature, sensed);
  if (!point) return noPoint(loop);
  const common = (run: LeadRun): boolean => run.branch === undefined;
  const drop = dropOf(runs, common, temperature, point.current);
  const left = point.voltage - drop;
  if (!(left > 0)) return drained(loop, drop);
  const wanted = loop.arc.holds === 'current' ? loop.arc.voltage : undefined;
  const arcVoltage = wanted === undefined ? left : Math.min(wanted, left);
  const needed = wanted === undefined ? point.voltage : wanted + drop;
  return resultOf(loop, runs, point, temperature, courses, { arcVoltage, needed, joint: arcVoltage + drop });
}

function temperatureOf(
  loop: ElectricLoop,
  runs: readonly LeadRun[],
  courses: readonly TemperatureCourse[] | undefined,
): RunTemperature {
  const stated = loop.lead_temperature;
  if (stated !== undefined) return fixedTemperatures(runs.map(() => stated));
  return courses ? fixedTemperatures(courses.map((course) => course.peak_K)) : steadyTemperatures(runs);
}

interface Volts {
  readonly arcVoltage: number;
  readonly needed: number;
  /** Where the sources join, as set for this arc [V]. */
  readonly joint: number;
}

function resultOf(
  loop: ElectricLoop,
  runs: readonly LeadRun[],
  point: Agreement,
  temperature: RunTemperature,
  courses: readonly TemperatureCourse[] | undefined,
  { arcVoltage, needed, joint }: Volts,
): WorkingLoop {
  const currents = runCurrents(runs, point);
  const temperatures = runs.map((_, i) => temperature(i, currents[i]!));
  const leads = runs.map((run, i) =>
    leadState(run, sourceName(loop, run), currents[i]!, temperatures[i]!, courses?.[i]),
  );
  const losses = runs.flatMap((run, i) => lossesOf(run, currents[i]!, temperatures[i]!));
  const sources = loop.sources.map((_, k) => {
    const own = dropOf(runs, (run) => run.branch === k, temperature, point.currents[k]!);
    return sourceState(loop, point, k, joint + own);
  });
  return {
    kind: 'operating_point',
    current_A: point.current,
    arc_voltage_V: arcVoltage,
    needed_V: needed,
    available_V: point.voltage,
    margin_V: point.voltage - needed,
    arc_W: arcVoltage * point.current,
    output_W: sources.reduce((sum, source) => sum + source.output_W, 0),
    loss_W: losses.reduce((sum, item) => sum + item.loss_W, 0),
    losses,
    sources,
    leads,
    arc_minutes_in_ten: loop.duty ? arcMinutesInTen(loop.duty) : 10,
    cautions: cautionsOf(loop, runs, leads),
  };
}

function sourceName(loop: ElectricLoop, { branch }: LeadRun): string | undefined {
  return branch === undefined ? undefined : loop.sources[branch]!.source.name;
}

function sourceState(loop: ElectricLoop, point: Agreement, place: number, voltage: number): SourceState {
  const { source } = loop.sources[place]!;
  const current = point.currents[place]!;
  const line = lineOf(source.characteristic);
  const output = voltage * current;
  const input = inputPower(source, output);
  return {
    name: source.name,
    current_A: current,
    share: current / point.current,
    terminal_voltage_V: voltage,
    output_W: output,
    permissible_minutes: permissibleMinutes(source, current),
    rated_maximum_A: ratedMaximum(source),
    drops_out: current === 0,
    at_last_point: current >= line.currents.at(-1)! * (1 - 1e-12),
    ...(input && { input }),
  };
}

function cautionsOf(
  loop: ElectricLoop,
  runs: readonly LeadRun[],
  leads: readonly LeadState[],
): readonly string[] {
  const laid = runs.flatMap(({ lead }) =>
    lead.laid === undefined || lead.laid === 'clear'
      ? []
      : [
          `The lead "${lead.name}" is ${lead.laid}: it can lose half of what it carries when it lies clear, and the temperatures here are for a lead that does.`,
        ],
  );
  const unsettled = leads.flatMap((lead) =>
    lead.steady.kind === 'steady' || loop.duty !== undefined || loop.lead_temperature !== undefined
      ? []
      : [`The lead "${lead.name}": ${lead.steady.reason}. It is taken at 200 °C.`],
  );
  const stopped = leads.flatMap((lead) =>
    lead.duty?.beyond_range === true
      ? [`The lead "${lead.name}" passes 200 °C in this duty; its course stops there.`]
      : [],
  );
  const unstated = leads.flatMap((lead) =>
    lead.insulation_limit_provenance === 'memory' && lead.temperature_K > lead.insulation_limit_K
      ? [
          `The lead "${lead.name}" reaches ${celsius(lead.temperature_K)} and no limit is stated for it; rubber-covered leads usually stand ${celsius(lead.insulation_limit_K)} (from memory). Read the limit off the lead and state it before this is run.`,
        ]
      : [],
  );
  return [...unstated, ...laid, ...unsettled, ...stopped];
}

function celsius(temperature: number): string {
  return `${Math.round(temperature - ZERO_CELSIUS)} °C`;
}

function noPoint({ sources, arc }: ElectricLoop): NoWorkingLoop {
  if (arc.holds === 'voltage') {
    const highest = Math.max(...sources.map(({ source }) => lineOf(source.characteristic).voltages[0]!));
    return {
      kind: 'no_operating_point',
      reason: `the arc is to hold ${figure(arc.voltage)} V, but the highest no-load voltage is ${figure(highest)} V`,
    };
  }
  const most = sources.reduce((sum, { source }) => sum + lineOf(source.characteristic).currents.at(-1)!, 0);
  return {
    kind: 'no_operating_point',
    reason: `the sources cannot give ${figure(arc.current)} A through their leads: their curves end at ${figure(most)} A together`,
  };
}

function drained({ arc }: ElectricLoop, drop: number): NoWorkingLoop {
  const what = arc.holds === 'current' ? `at ${figure(arc.current)} A` : 'at the voltage held';
  return {
    kind: 'no_operating_point',
    reason: `${what} the leads alone take ${figure(drop)} V, and nothing is left for the arc`,
  };
}

function figure(value: number): string {
  return String(Number(value.toPrecision(4)));
}
