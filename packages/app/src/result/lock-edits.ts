import { exactAmount, type Job, type Plan, type UnitSystem } from '@furrow/engine';
import type { Edit } from '../document/index.ts';

/** A value of the plan that can be held while the rest is planned again; named as the job file names it. */
export type LockName = keyof Job['locks'];

/** Every lock, in the order of the file. */
export const LOCK_NAMES: readonly LockName[] = [
  'electrode_diameter',
  'current',
  'travel',
  'tracks',
  'track_spacing',
  'layers',
];

/** How a plan's value is written as a lock; undefined where the plan has no single value for it. */
export function lockValue(plan: Plan, name: LockName, units: UnitSystem): string | number | undefined {
  const first = plan.passes[0];
  switch (name) {
    case 'electrode_diameter':
      return exactAmount(plan.electrode_diameter_mm / 1000, 'length', units);
    case 'current':
      return first === undefined ? undefined : exactAmount(first.current_A, 'current', units);
    case 'travel':
      return first === undefined ? undefined : exactAmount(first.travel_mm_per_min / 60_000, 'speed', units);
    case 'tracks':
      return plan.tracks;
    case 'track_spacing':
      return plan.tracks > 1 ? exactAmount(plan.track_spacing_mm / 1000, 'length', units) : undefined;
    case 'layers':
      return plan.layers;
  }
}

/** Holds one value of the plan, or lets it go. */
export function toggleLock(locks: Job['locks'], plan: Plan, name: LockName, units: UnitSystem): Edit[] {
  const path = ['locks', name];
  if (locks[name] !== undefined) return [{ do: 'remove', path }];
  const value = lockValue(plan, name, units);
  return value === undefined ? [] : [{ do: 'set', path, value }];
}

/**
 * Holds what makes one plan different from the others: electrode, current, tracks, their spacing and layers.
 * Travel stays free, because the planner solves for it.
 */
export function adoptPlan(locks: Job['locks'], plan: Plan, units: UnitSystem): Edit[] {
  return LOCK_NAMES.flatMap((name): Edit[] => {
    const path = ['locks', name];
    const value = name === 'travel' ? undefined : lockValue(plan, name, units);
    if (value !== undefined) return [{ do: 'set', path, value }];
    return locks[name] === undefined ? [] : [{ do: 'remove', path }];
  });
}
