import { type Answer, formatReadOff, fromUnit, type Job, type UnitSystem } from '@furrow/engine';
import { REMEDY_AMOUNTS, REMEDY_COUNTS } from '@furrow/papers/words';
import type { Edit } from '../../sheet/document/index.ts';
import { LOCK_NAMES } from './lock-edits.ts';

/** One change that was found to free a refused job. */
type Remedy = NonNullable<Answer['refusal']>['binding'][number];

const WORDS: Readonly<Record<string, Edit>> = {
  gauge_stops: { do: 'set', path: ['plan', 'gauge_stops'], value: 'allowed' },
  trial: { do: 'set', path: ['kit', 'trial', 'on'], value: 'scrap' },
};

/**
 * What trying a remedy changes in the job file; nothing where it changes the kit or cannot be told from what is stated.
 * Amounts are rounded to the side that eases, as the words of the remedy are.
 */
export function remedyEdits(
  { constraint, demand, limit, unit }: Remedy,
  job: Job,
  units: UnitSystem,
): Edit[] {
  const place = REMEDY_AMOUNTS[constraint];
  if (place !== undefined) {
    const value = formatReadOff(fromUnit(demand, unit), place.kind, units, place.side);
    return [{ do: 'set', path: [...place.path], value }];
  }
  const count = REMEDY_COUNTS[constraint];
  if (count !== undefined) return [{ do: 'set', path: [...count], value: demand }];
  const words = WORDS[constraint];
  if (words !== undefined) return [words];
  if (constraint === 'locks') {
    return LOCK_NAMES.filter((name) => job.locks[name] !== undefined).map((name) => unlock(name));
  }
  const lock = LOCK_NAMES.find((name) => constraint === `locks.${name}`);
  if (lock !== undefined) return [unlock(lock)];
  const { electrodes } = job.kit;
  if (constraint === 'electrode_diameter') {
    const diameter = formatReadOff(fromUnit(demand, unit), 'length', 'inch', 'most');
    return [{ do: 'append', path: ['kit', 'electrodes'], entry: { diameter } }];
  }
  if (constraint === 'electrode_stock') {
    const at = electrodes.flatMap(({ count: stated }, index) => (stated === limit ? [index] : []));
    return at.length === 1
      ? [{ do: 'set', path: ['kit', 'electrodes', at[0]!, 'count'], value: demand }]
      : [];
  }
  return [];
}

function unlock(name: string): Edit {
  return { do: 'remove', path: ['locks', name] };
}
