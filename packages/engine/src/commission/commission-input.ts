import type { FaultModel } from '../faults/index.ts';
import type { Job } from '../job/index.ts';
import type { PassOutcome } from '../plan/index.ts';
import type { CommissionSupply } from './commission-supply.ts';
import type { CommissionInstruments, StatedFigure } from './instruments.ts';

/** What the shop states beside plan, job and supply; what is left out is taken as usual. */
export interface CommissionOptions {
  readonly instruments?: Partial<CommissionInstruments>;
  /** Length of electrode from the contact jaws to the arc [m]. */
  readonly stickOut?: number;
  /** The table of faults, moved by the shop's counts. */
  readonly faults?: FaultModel;
}

/** One pass of a plan, as far as commissioning needs it. */
export type PlannedPass = Pick<
  PassOutcome,
  'number' | 'current' | 'voltage' | 'pushAngle' | 'travel' | 'setByGauge' | 'dwell'
>;

/** What commissioning needs of a plan: its passes. */
export interface PlannedPasses {
  readonly passes: readonly PlannedPass[];
}

/** All that the sections of the checks work from. */
export interface CommissionInput {
  readonly plan: PlannedPasses;
  readonly job: Job;
  readonly supply: CommissionSupply;
  readonly instruments: CommissionInstruments;
  readonly stickOut: StatedFigure;
  /** The pass with the greatest current: the one the trial arc is set as. */
  readonly trial: PlannedPass;
}

/** The pass with the greatest current; of equals the first. */
export function trialPass(plan: PlannedPasses): PlannedPass | undefined {
  return plan.passes.reduce<PlannedPass | undefined>(
    (best, pass) => (best === undefined || pass.current > best.current ? pass : best),
    undefined,
  );
}

/** Passes that share a setting, in the order of their first one. */
export function passesBy(
  plan: PlannedPasses,
  setting: (pass: PlannedPass) => number,
): [number, PlannedPass[]][] {
  const groups = new Map<number, PlannedPass[]>();
  for (const pass of plan.passes) groups.set(setting(pass), [...(groups.get(setting(pass)) ?? []), pass]);
  return [...groups];
}

/** "pass 1", "passes 1 and 3", "passes 1, 2 and 3". */
export function passNames(passes: readonly PlannedPass[]): string {
  const numbers = passes.map(({ number }) => String(number));
  if (numbers.length === 1) return `pass ${numbers[0]}`;
  return `passes ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
}
