import type { Outcome } from '../issue/index.ts';
import { airOfKit, electricOfKit, type Kit } from '../kit/index.ts';
import type { LimitFunction } from '../limit/index.ts';
import {
  airLimits,
  electricLimits,
  REGULATOR_PRESSURE,
  type SourcedPressure,
  TORCH_PRESSURE,
} from '../supply/index.ts';

/** The margins that a kit puts on a plan, for the planner. */
export interface KitLimits {
  readonly functions: readonly LimitFunction[];
  /** Whether a hard margin has turned a setting away since this was made. */
  readonly turnedAway: () => boolean;
}

/** Pressures that are wanted: the kit's own, or those of the trade. */
export function wantedPressures({ air: { wanted } }: Kit): {
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

/** The margins of a kit as limit functions that remember what they turned away; only for a kit that was read. */
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
