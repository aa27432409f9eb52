import type { Issue, Outcome } from '../../issue/index.ts';
import { FREE_AIR_DENSITY } from './air-state.ts';
import type { AirItem, AirSupply } from './air-supply.ts';
import { checkAir, openBranches } from './check-air.ts';
import { type PathState, solvePath } from './solve-path.ts';

/** Pressures at one point between receiver and torch. */
export interface AirPressure {
  /** Id of the item behind which the point lies; `receiver` for the start; the last is the torch's inlet. */
  readonly behind: string;
  /** Pressure without flow [Pa gauge]. */
  readonly static: number;
  /** Pressure while the torch blows [Pa gauge]. */
  readonly flowing: number;
}

/** Flow and pressures of an air supply while the torch blows. */
export interface AirPoint {
  /** Pressure in the receiver [Pa gauge]. */
  readonly receiver: number;
  /** Free air through the torch (20 degC, 1 bar, dry) [m3/s]. */
  readonly torchFlow: number;
  /** Free air out of the receiver, other users included [m3/s]. */
  readonly receiverFlow: number;
  /** Flowing pressure behind the last regulator, or before the torch where there is none [Pa gauge]. */
  readonly regulator: number;
  /** Flowing pressure before the torch [Pa gauge]. */
  readonly torch: number;
  /** Every point from receiver to torch. */
  readonly points: readonly AirPressure[];
  /** Ids of what is choked; `torch` is meant to be. */
  readonly choked: readonly string[];
  /** Regulator that holds its pressure; undefined where its supply is too low or there is none. */
  readonly regulating: string | undefined;
}

/**
 * Flow and pressure at every point from receiver to torch, without and with flow.
 *
 * Isothermal runs (Colebrook), ISO 6358 components, one bracketed unknown. Choking is found wherever it occurs.
 *
 * @param supply - the air supply [record], see AirSupply
 * @param receiver - pressure in the receiver [Pa gauge], > 0
 * @returns the point of operation, or why there is none [record]
 * @source complete isothermal equation (Crane TP-410), Colebrook, ISO 6358
 * @example
 * const supply = { atmosphere: 101325, temperature: 293.15, compressor: { delivery: [{ pressure: 8e5, freeAir: 0.02 }] }, receiver: { volume: 0.5, cutIn: 6e5, cutOut: 8e5 }, path: [], torch: { kind: 'conductance', conductance: 3e-8, criticalRatio: 0.5 } };
 * airPoint(supply, 7e5).value.torchFlow * 60000 // => 1438.306...
 */
export function airPoint(supply: AirSupply, receiver: number): Outcome<AirPoint> {
  const issues = checkAir(supply);
  if (issues.length > 0) return { ok: false, issues };
  const open = withOpenBranches(supply);
  const state = receiver > 0 ? solvePath(open, receiver + supply.atmosphere) : undefined;
  if (state === undefined) return { ok: false, issues: [noFlow(supply, receiver)] };
  return { ok: true, value: pointOf(open, state, receiver) };
}

/** The supply without the branches that are shut. */
export function withOpenBranches(supply: AirSupply): AirSupply {
  const path = supply.path.map((item) =>
    item.kind === 'parallel' ? { ...item, branches: openBranches(item.branches) } : item,
  );
  return { ...supply, path };
}

/** Place in the path behind which the regulated pressure is read: the last regulator, else the torch's inlet. */
export function regulatorIndex(path: readonly AirItem[]): number {
  const last = path.findLastIndex(({ kind }) => kind === 'regulator');
  return last < 0 ? path.length : last + 1;
}

function noFlow({ path }: AirSupply, receiver: number): Issue {
  const draws = path.filter((item) => item.kind === 'draw' && item.freeAir > 0).map(({ id }) => id);
  const reason =
    draws.length > 0 && receiver > 0
      ? `${draws.join(' and ')} take more than can pass on the way to the torch`
      : 'the receiver has no pressure above the atmosphere';
  const message = `At this pressure in the receiver no air reaches the torch: ${reason}.`;
  return { code: 'AIR_NO_FLOW', path: draws.length > 0 ? 'path' : 'receiver', message };
}

function pointOf(supply: AirSupply, state: PathState, receiver: number): AirPoint {
  const { path, atmosphere } = supply;
  const flowing = state.pressures.map((pressure) => pressure - atmosphere);
  const names = ['receiver', ...path.map(({ id }) => id)];
  let still = receiver;
  const points = names.map((behind, i) => {
    const item = i === 0 ? undefined : path[i - 1];
    if (item?.kind === 'regulator') still = Math.min(still, item.set);
    return { behind, static: still, flowing: flowing[i]! };
  });
  return {
    receiver,
    torchFlow: state.torchFlow / FREE_AIR_DENSITY,
    receiverFlow: state.receiverFlow / FREE_AIR_DENSITY,
    regulator: flowing[regulatorIndex(path)]!,
    torch: flowing.at(-1)!,
    points,
    choked: state.choked,
    regulating: state.regulating,
  };
}
