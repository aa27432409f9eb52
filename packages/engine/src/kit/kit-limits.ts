import type { Outcome } from '../issue/index.ts';
import type { LimitFunction } from '../limit/index.ts';
import {
  airLimits,
  electricLimits,
  REGULATOR_PRESSURE,
  type SourcedPressure,
  TORCH_PRESSURE,
} from '../supply/index.ts';
import { airOfKit } from './air-of-kit.ts';
import { electricOfKit } from './electric-of-kit.ts';
import type { Kit } from './kit-schema.ts';

/** The margins that a kit puts on a plan, for the planner. */
export interface KitLimits {
  readonly functions: readonly LimitFunction[];
  /** Whether a hard margin has turned a setting away since this was made. */
  readonly turnedAway: () => boolean;
}

/**
 * Flowing pressures that are asked for: the kit's own, or those of the trade.
 *
 * @param kit - the kit [record], one that was read
 * @returns the pressures behind the regulator and before the torch, each with its source [record]
 * @source common practice, no source, where the kit states none
 * @example
 * wantedPressures({ air: { wanted: { regulator: 6e5 } } }).regulator.value // => 600000
 */
export function wantedPressures({ air: { wanted } }: { readonly air: Pick<Kit['air'], 'wanted'> }): {
  readonly regulator: SourcedPressure;
  readonly torch: SourcedPressure;
} {
  const own = (value: number | undefined, usual: SourcedPressure): SourcedPressure =>
    value === undefined
      ? usual
      : { value, source: { text: 'the pressure that the kit asks for', provenance: 'job file' } };
  return {
    regulator: own(wanted.regulator, REGULATOR_PRESSURE),
    torch: own(wanted.torch, TORCH_PRESSURE),
  };
}

/**
 * The margins of a kit as limit functions that remember what they turned away.
 *
 * @param kit - the kit [record], one that was read
 * @returns the functions, and whether any of them has turned a setting away since [record]
 * @source as electricLimits and airLimits
 * @example
 * kitLimits(demoKit.kit).turnedAway() // => false
 */
export function kitLimits(kit: Kit): KitLimits {
  const electric = readable(electricLimits(electricOfKit(kit).electric));
  const torchSource = { text: 'the torch as the kit describes it', provenance: 'job file' } as const;
  const air = readable(airLimits(airOfKit(kit), { ...wantedPressures(kit), torchSource }));
  let turned = false;
  const watched =
    (check: LimitFunction): LimitFunction =>
    (candidate, job) => {
      const limits = check(candidate, job);
      turned ||= limits.some((limit) => limit.hard && limit.verdict === 'fails');
      return limits;
    };
  return { functions: [electric, air].map(watched), turnedAway: () => turned };
}

function readable(limits: Outcome<LimitFunction>): LimitFunction {
  if (limits.ok) return limits.value;
  throw new Error(`a kit that was read cannot be computed with: ${limits.issues[0]?.message}`);
}
