import { amountOf, type Sentence, say } from '../../quantity/index.ts';
import type { RunExpectation, RunOutcome } from '../../run/index.ts';

/** Shares by which set points and length may be off before a log seems to be of another job [-]: judgement, no source. */
const CURRENT_OFF = 0.2;
const VOLTAGE_OFF = 0.15;
const LENGTH_OFF = 0.1;

/** Whether a log can be of a job, and what speaks against it. */
export interface Fit {
  readonly fits: boolean;
  readonly says: readonly Sentence[];
}

/** Holds set points, length and number of passes of a log against those of a job. */
export function fitOf({ totals, passes, way }: RunOutcome, expected: RunExpectation): Fit {
  const says: Sentence[] = [];
  const off = (value: number, set: number): number => Math.abs(value / set - 1);
  if (totals.current !== undefined && off(totals.current, expected.current) > CURRENT_OFF)
    says.push(
      say`the current is ${amountOf(totals.current, 'current')}, the plan sets ${amountOf(expected.current, 'current')}`,
    );
  if (totals.voltage !== undefined && off(totals.voltage, expected.voltage) > VOLTAGE_OFF)
    says.push(
      say`the arc voltage is ${amountOf(totals.voltage, 'voltage')}, the plan sets ${amountOf(expected.voltage, 'voltage')}`,
    );
  const [planned] = expected.passes;
  if (way === 'position' || way === 'travel') {
    const length = planned === undefined ? expected.length : planned.to - planned.from;
    const longest = Math.max(0, ...passes.map(({ totals: { travelled = 0 } }) => travelled));
    const first = passes[0];
    if (longest > (1 + LENGTH_OFF) * length)
      says.push(
        say`a pass ran over ${amountOf(longest, 'length')}, the seam is ${amountOf(length, 'length')} long`,
      );
    else if (passes.length > 1 && first !== undefined && longest < 0.5 * length)
      says.push(
        say`no pass ran further than ${amountOf(longest, 'length')}, the seam is ${amountOf(length, 'length')} long`,
      );
  }
  return { fits: says.length === 0, says };
}
