import {
  type Answer,
  formatAmount,
  formatReadOff,
  formatStated,
  fromUnit,
  jobFields,
  type QuantityKind,
  type UnitSystem,
} from '@furrow/engine';

/** One thing in the way of a plan, with the least change that would free it or what would help. */
type Binding = NonNullable<Answer['refusal']>['binding'][number];

/** Where an amount of a remedy stands in the job file, its kind, and to which side it is rounded so that it eases. */
export interface RemedyPlace {
  readonly path: readonly string[];
  readonly kind: QuantityKind;
  readonly side: 'least' | 'most';
}

/** Amounts of the job by the constraint that eases with them. */
export const REMEDY_AMOUNTS: Readonly<Record<string, RemedyPlace>> = {
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

/** Counts of the job by the constraint that eases with them. */
export const REMEDY_COUNTS: Readonly<Record<string, readonly string[]>> = {
  stations_most: ['kit', 'gauge', 'stations_most'],
  layers_most: ['plan', 'layers_most'],
  tracks_most: ['plan', 'tracks_most'],
};

/** What else may stand in the way, as a shop calls it. */
const OTHERS: Readonly<Record<string, string>> = {
  depth_reached: 'Chance that the depth is reached',
  not_too_deep: 'Chance that no point is too deep',
  width_in_band: 'Chance that the width lies in its band',
  ligament_kept: 'Chance that the ligament is kept',
  electrode_diameter: 'Electrodes at hand',
  electrode_stock: 'Electrodes in stock',
  electrode_current: 'Current range of the electrode',
  gauge_stops: 'Gauging between layers',
  trial: 'Plate for a trial',
  locks: 'Locked values',
};

/** Titles of the fields of a job file by their path. */
let titles: ReadonlyMap<string, string> | undefined;

function titleOfField(path: readonly string[]): string | undefined {
  titles ??= new Map(jobFields().map((field) => [field.path, field.title]));
  return titles.get(path.join('.'));
}

/** What stands in the way, by the name that the form has for it. */
export function constraintTitle(constraint: string): string {
  const path = REMEDY_AMOUNTS[constraint]?.path ?? REMEDY_COUNTS[constraint];
  const field = path === undefined ? undefined : titleOfField(path);
  if (field !== undefined) return field;
  if (constraint.startsWith('locks.')) {
    const lock = titleOfField(constraint.split('.'));
    if (lock !== undefined) return `Locked: ${lock}`;
  }
  const words = OTHERS[constraint] ?? constraint.replaceAll(/[._]/gu, ' ');
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/** What would do and what there is: the first rounded to the side that frees the job, as the remedy is. */
export function bindingAmounts(
  { constraint, demand, limit, unit, frees }: Binding,
  units: UnitSystem,
): { readonly asked: string; readonly there: string } {
  const place = frees ? REMEDY_AMOUNTS[constraint] : undefined;
  if (place === undefined)
    return { asked: formatStated(demand, unit, units), there: formatStated(limit, unit, units) };
  return {
    asked: formatReadOff(fromUnit(demand, unit), place.kind, units, place.side),
    there: formatAmount(fromUnit(limit, unit), place.kind, units),
  };
}
