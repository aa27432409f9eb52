import { exactAmount, fromUnit, type Job, type Plan, type UnitSystem } from '@furrow/engine';
import type { Edit, TextFile } from '../../sheet/document/index.ts';
import { kitSpelling } from './kit-spelling.ts';

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

/** What locks are written from and into. */
export interface LockPlace {
  readonly file: TextFile;
  readonly locks: Job['locks'];
  readonly units: UnitSystem;
}

/** How a plan's value is written as a lock; undefined where the plan has no single value for it. */
export function lockValue(
  plan: Plan,
  name: LockName,
  { file, units }: LockPlace,
): string | number | undefined {
  const first = plan.passes[0];
  switch (name) {
    case 'electrode_diameter':
      return (
        kitSpelling(file, plan.electrode_diameter_mm) ??
        exactAmount(fromUnit(plan.electrode_diameter_mm, 'mm'), 'length', units)
      );
    case 'current':
      return first === undefined ? undefined : exactAmount(first.current_A, 'current', units);
    case 'travel':
      return first === undefined
        ? undefined
        : exactAmount(fromUnit(first.travel_mm_per_min, 'mm/min'), 'speed', units);
    case 'tracks':
      return plan.tracks;
    case 'track_spacing':
      return plan.tracks > 1
        ? exactAmount(fromUnit(plan.track_spacing_mm, 'mm'), 'length', units)
        : undefined;
    case 'layers':
      return plan.layers;
  }
}

/** Holds one value of the plan, or lets it go. */
export function toggleLock(plan: Plan, name: LockName, place: LockPlace): Edit[] {
  const path = ['locks', name];
  if (place.locks[name] !== undefined) return [{ do: 'remove', path }];
  const value = lockValue(plan, name, place);
  return value === undefined ? [] : [{ do: 'set', path, value }];
}

/**
 * Holds what makes one plan different from the others: electrode, current, tracks, their spacing and layers.
 * Travel stays free, because the planner solves for it.
 */
export function adoptPlan(plan: Plan, place: LockPlace): Edit[] {
  return LOCK_NAMES.flatMap((name): Edit[] => {
    const path = ['locks', name];
    const value = name === 'travel' ? undefined : lockValue(plan, name, place);
    if (value !== undefined) return [{ do: 'set', path, value }];
    return place.locks[name] === undefined ? [] : [{ do: 'remove', path }];
  });
}
