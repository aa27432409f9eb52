import type { Issue, Outcome } from '../../issue/index.ts';
import { loopIssues } from './check-loop.ts';
import type { ElectricLoop } from './electric-loop.ts';
import type { NoWorkingLoop } from './loop-result.ts';
import { solveChecked } from './solve-loop.ts';

/**
 * Fall of arc voltage per length of arc in air [V/m], least and greatest: a rough figure from memory, of low
 * confidence, never a limit.
 */
const ARC_GRADIENT = { least: 1000, most: 3000 } as const;

/** What a sense wire landed in the wrong place does. */
export interface SenseError {
  readonly kind: 'sense_error';
  /** What the sense wires read [V]. */
  readonly read_V: number;
  /** What the arc has [V]. */
  readonly arc_voltage_V: number;
  /** Read less true [V]. */
  readonly error_V: number;
  /** Current with the wires where they are [A]. */
  readonly current_A: number;
  /** Current with the wires at the arc [A]. */
  readonly right_current_A: number;
  /** Change of the arc's length [m], least and greatest by a rough gradient; negative is shorter. */
  readonly arc_length_change_m: readonly [number, number];
  readonly says: string;
}

/**
 * Error of the arc voltage when the sense wires are landed away from the arc, and what the feed makes of it.
 *
 * The drop of every lead between the wires is read as arc voltage. A feed that holds a voltage then shortens
 * the arc until arc and drop together make the set value; the loop is solved anew with that, so the current's change
 * is in it. The length uses 1 to 3 V/mm (memory, low confidence) unless a gradient is given.
 *
 * @param loop - the loop with the wires at the arc [record], any
 * @param between - names of the leads that lie between the wires [list], leads of the whole current
 * @param gradient - arc voltage per length of arc [V/m], > 0; 1000 to 3000 if not stated
 * @returns error, true voltage and change of length, or that there is no working point, or the issues [record]
 * @source Ohm's law; gradient from memory, low confidence
 * @example
 * const plant = { name: 'A', characteristic: { kind: 'drooping', no_load_voltage: 80, slope: 0.035 }, rating: [{ current: 1000, duty: 0.6 }] };
 * const back = { name: 'work return', side: 'work', area: 95e-6, parallels: 2, length: 30 };
 * const arc = { holds: 'voltage', voltage: 42 };
 * const found = senseWireError({ sources: [{ source: plant }], leads: [back], arc, ambient: 303.15, lead_temperature: 333.15 }, ['work return']);
 * found.value.read_V // => 42
 * found.value.arc_voltage_V // => 38.11...
 */
export function senseWireError(
  loop: ElectricLoop,
  between: readonly string[],
  gradient?: number,
): Outcome<SenseError | NoWorkingLoop> {
  const issues = [...loopIssues(loop), ...betweenIssues(loop, between), ...gradientIssues(gradient)];
  if (issues.length > 0) return { ok: false, issues };
  const right = solveChecked(loop, new Set());
  if (right.kind === 'no_operating_point') return { ok: true, value: right };
  const sensed = solveChecked(loop, new Set(between));
  if (sensed.kind === 'no_operating_point') return { ok: true, value: sensed };
  const error = sensed.leads.reduce(
    (sum, lead) => (between.includes(lead.name) ? sum + lead.drop_V : sum),
    0,
  );
  const change = sensed.arc_voltage_V - right.arc_voltage_V;
  const most = gradient ?? ARC_GRADIENT.most;
  const least = gradient ?? ARC_GRADIENT.least;
  return {
    ok: true,
    value: {
      kind: 'sense_error',
      read_V: sensed.arc_voltage_V + error,
      arc_voltage_V: sensed.arc_voltage_V,
      error_V: error,
      current_A: sensed.current_A,
      right_current_A: right.current_A,
      arc_length_change_m: [change / least, change / most],
      says: saysOf(loop, error),
    },
  };
}

function saysOf(loop: ElectricLoop, error: number): string {
  const volts = `${error.toFixed(1)} V`;
  return loop.arc.holds === 'voltage'
    ? `The feed reads ${volts} of lead as arc and runs the arc that much too short: it may touch down, and the current changes with it.`
    : `The meter reads ${volts} more than the arc has; the current is held, so the arc itself stays as it is.`;
}

function betweenIssues(loop: ElectricLoop, between: readonly string[]): readonly Issue[] {
  const names = loop.leads.map((lead) => lead.name);
  return between
    .filter((name) => !names.includes(name))
    .map((name) => ({
      code: 'ELECTRIC_VALUE',
      message: `No lead of the whole current is called "${name}".`,
      path: 'between',
      read: name,
      accepted: names.length === 0 ? 'nothing: the loop has no such lead' : names.join(', '),
      ...(names[0] !== undefined && { nearest: names[0] }),
    }));
}

function gradientIssues(gradient: number | undefined): readonly Issue[] {
  if (gradient === undefined || (gradient > 0 && Number.isFinite(gradient))) return [];
  const message = `An arc's voltage rises with its length; ${gradient} V/m does not.`;
  return [
    {
      code: 'ELECTRIC_VALUE',
      message,
      path: 'gradient',
      read: String(gradient),
      accepted: 'more than 0 V/m',
    },
  ];
}
