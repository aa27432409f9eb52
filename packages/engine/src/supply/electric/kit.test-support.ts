import type { ElectricLoop } from './electric-loop.ts';
import type { Lead } from './lead.ts';
import type { LoopResult, WorkingLoop } from './loop-result.ts';
import type { PowerSource } from './power-source.ts';
import { solveLoop } from './solve-loop.ts';

/** A made-up drooping source: 80 V without load, 50 V at 1000 A. */
export const SOURCE: PowerSource = {
  name: 'red',
  characteristic: { kind: 'drooping', no_load_voltage: 80, slope: 0.03 },
  rating: [
    { current: 1000, voltage: 44, duty: 0.6 },
    { current: 800, voltage: 44, duty: 1 },
  ],
};

export const OUT: Lead = { name: 'electrode lead', side: 'electrode', area: 95e-6, parallels: 2, length: 15 };
export const BACK: Lead = { name: 'work return', side: 'work', area: 95e-6, parallels: 2, length: 15 };

/** One source, two leads, 42 V held, 30 degC around. */
export const LOOP: ElectricLoop = {
  sources: [{ source: SOURCE }],
  leads: [OUT, BACK],
  arc: { holds: 'voltage', voltage: 42 },
  ambient: 303.15,
};

/** What solving a good loop gives; throws on a refusal. */
export function solved(loop: ElectricLoop): LoopResult {
  const outcome = solveLoop(loop);
  if (!outcome.ok) throw new Error(outcome.issues.map((issue) => issue.message).join(' '));
  return outcome.value;
}

/** The working point of a good loop; throws where there is none. */
export function working(loop: ElectricLoop): WorkingLoop {
  const result = solved(loop);
  if (result.kind !== 'operating_point') throw new Error(result.reason);
  return result;
}
