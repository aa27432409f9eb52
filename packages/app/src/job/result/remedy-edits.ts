import { type Answer, formatBound, type Job, type QuantityKind, type UnitSystem } from '@furrow/engine';
import type { Edit } from '../../sheet/document/index.ts';
import { LOCK_NAMES } from './lock-edits.ts';

/** One change that was found to free a refused job. */
type Remedy = NonNullable<Answer['refusal']>['binding'][number];

/** Where an amount of a remedy goes in the job file: its path, its kind, how many SI units a stated one is, and to which side it eases. */
interface Place {
  readonly path: readonly string[];
  readonly kind: QuantityKind;
  readonly toSi: (stated: number) => number;
  readonly side: 'least' | 'most';
}

const ZERO_C = 273.15;
const mm = (stated: number): number => stated / 1000;
const same = (stated: number): number => stated;

const AMOUNTS: Readonly<Record<string, Place>> = {
  width_most: { path: ['groove', 'width', 'most'], kind: 'length', toSi: mm, side: 'least' },
  width_least: { path: ['groove', 'width', 'least'], kind: 'length', toSi: mm, side: 'most' },
  root_radius: { path: ['groove', 'root_radius_least'], kind: 'length', toSi: mm, side: 'most' },
  depth_plus: { path: ['groove', 'depth', 'plus'], kind: 'length', toSi: mm, side: 'least' },
  depth_minus: { path: ['groove', 'depth', 'minus'], kind: 'length', toSi: mm, side: 'least' },
  ligament_least: { path: ['groove', 'ligament_least'], kind: 'length', toSi: mm, side: 'most' },
  assurance: {
    path: ['groove', 'assurance'],
    kind: 'share',
    toSi: (percent) => percent / 100,
    side: 'most',
  },
  trial_length: { path: ['kit', 'trial', 'length_most'], kind: 'length', toSi: mm, side: 'least' },
  gauge: { path: ['kit', 'gauge', 'reading_sd'], kind: 'length', toSi: mm, side: 'most' },
  source_current_most: { path: ['kit', 'current', 'most'], kind: 'current', toSi: same, side: 'least' },
  source_current_least: { path: ['kit', 'current', 'least'], kind: 'current', toSi: same, side: 'most' },
  travel_most: {
    path: ['kit', 'travel', 'most'],
    kind: 'speed',
    toSi: (mmPerMin) => mmPerMin / 60_000,
    side: 'least',
  },
  travel_least: {
    path: ['kit', 'travel', 'least'],
    kind: 'speed',
    toSi: (mmPerMin) => mmPerMin / 60_000,
    side: 'most',
  },
  back_face: {
    path: ['heat', 'back_face_most'],
    kind: 'temperature',
    toSi: (celsius) => celsius + ZERO_C,
    side: 'least',
  },
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
export function remedyEdits({ constraint, demand, limit }: Remedy, job: Job, units: UnitSystem): Edit[] {
  const place = AMOUNTS[constraint];
  if (place !== undefined) {
    const value = formatBound(place.toSi(demand), place.kind, units, place.side);
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
    const diameter = formatBound(mm(demand), 'length', 'inch', 'most');
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
