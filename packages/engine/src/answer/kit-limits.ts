import type { Issue } from '../issue/index.ts';
import { airOfKit, electricOfKit, type Kit } from '../kit/index.ts';
import { type Limit, type LimitFunction, limitOf } from '../limit/index.ts';
import {
  type AirDemand,
  type AirSupply,
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
  const electric = electricLimits(electricOfKit(kit).electric);
  if (!electric.ok)
    throw new Error(`a kit that was read cannot be computed with: ${electric.issues[0]?.message}`);
  let turned = false;
  const watched =
    (check: LimitFunction): LimitFunction =>
    (candidate, job) => {
      const limits = check(candidate, job);
      turned ||= limits.some((limit) => limit.hard && limit.verdict === 'fails');
      return limits;
    };
  return { functions: [electric.value, airLimit(kit)].map(watched), turnedAway: () => turned };
}

/** Margins of the air for the time of one pass; the receiver is followed once for each such time. */
function airLimit(kit: Kit): LimitFunction {
  const supply = airOfKit(kit);
  const known = new Map<number, readonly Limit[]>();
  return ({ passLength, travel }) => {
    // To the second: a receiver does not tell shorter times apart.
    const time = Math.max(1, Math.ceil(passLength / travel));
    const found = known.get(time) ?? airLimitsAt(supply, kit, time);
    known.set(time, found);
    return found;
  };
}

function airLimitsAt(supply: AirSupply, kit: Kit, time: number): readonly Limit[] {
  const demand: AirDemand = {
    ...wantedPressures(kit),
    torchSource: { text: 'the torch as the kit describes it', provenance: 'job file' },
    time,
  };
  const limits = airLimits(supply, demand);
  return limits.ok ? limits.value : [noAir(limits.issues, demand)];
}

/** The one margin of an air supply that brings no air to the torch at all. */
function noAir(issues: readonly Issue[], { torch }: AirDemand): Limit {
  return limitOf({
    id: 'air_torch',
    title: 'Flowing pressure before the torch',
    demand: 0,
    capacity: torch.value / 1000,
    unit: 'kPa',
    sense: 'least',
    hard: true,
    source: { text: 'the air supply as the kit describes it', provenance: 'job file' },
    remedy: issues.map(({ message }) => message).join(' '),
  });
}
