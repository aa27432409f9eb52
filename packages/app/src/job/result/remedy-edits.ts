import {
  type Answer,
  formatBound,
  fromUnit,
  type Job,
  type QuantityKind,
  type UnitSystem,
} from '@furrow/engine';
import type { Edit } from '../../sheet/document/index.ts';
import { LOCK_NAMES } from './lock-edits.ts';

/** One change that was found to free a refused job. */
type Remedy = NonNullable<Answer['refusal']>['binding'][number];

/** Where an amount of a remedy goes in the job file, its kind, and to which side it is rounded so that it eases. */
interface Place {
  readonly path: readonly string[];
  readonly kind: QuantityKind;
  readonly side: 'least' | 'most';
}

const AMOUNTS: Readonly<Record<string, Place>> = {
  width_most: { path: ['groove', 'width', 'most'], kind: 'length', side: 'least' },
  width_least: { path: ['groove', 'width', 'least'], kind: 'length', side: 'most' },
  root_radius: { path: ['groove', 'root_radius_least'], kind: 'length', side: 'most' },
  depth_plus: { path: ['groove', 'depth', 'plus'], kind: 'length', side: 'least' },
  depth_minus: { path: ['groove', 'depth', 'minus'], kind: 'length', side: 'least' },
  ligament_least: { path: ['groove', 'ligament_least'], kind: 'length', side: 'most' },
  assurance: { path: ['groove', 'assurance'], kind: 'share', side: 'most' },
  trial_length: { path: ['kit', 'trial', 'length_most'], kind: 'length', side: 'least' },
  gauge: { path: ['kit', 'gauge', 'reading_sd'], kind: 'length', side: 'most' },
  source_current_most: { path: ['kit', 'current', 'most'], kind: 'current', side: 'least' },
  source_current_least: { path: ['kit', 'current', 'least'], kind: 'current', side: 'most' },
  travel_most: { path: ['kit', 'travel', 'most'], kind: 'speed', side: 'least' },
  travel_least: { path: ['kit', 'travel', 'least'], kind: 'speed', side: 'most' },
  back_face: { path: ['heat', 'back_face_most'], kind: 'temperature', side: 'least' },
};

const COUNTS: Readonly<Record<string, readonly string[]>> = {
  stations_most: ['kit', 'gauge', 'stations_most'],
  layers_most: ['plan', 'layers_most'],
  tracks_most: ['plan', 'tracks_most'],
};

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
  const place = AMOUNTS[constraint];
  if (place !== undefined) {
    const value = formatBound(fromUnit(demand, unit), place.kind, units, place.side);
    return [{ do: 'set', path: [...place.path], value }];
  }
  const count = COUNTS[constraint];
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
    const diameter = formatBound(fromUnit(demand, unit), 'length', 'inch', 'most');
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
