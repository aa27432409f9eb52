import type { JobField } from '@furrow/engine';

/** A group of the form; what it holds stands in the order of the file. */
export interface FormGroup {
  /** Path of the group; empty for the fields at the top. */
  readonly path: string;
  readonly title: string;
  readonly entries: readonly FormEntry[];
}

/** A field, or a group inside a group. */
export type FormEntry = { readonly field: JobField } | { readonly group: FormGroup };

const TITLES: Readonly<Record<string, string>> = {
  plan: 'Planning',
  heat: 'Heat in the plate',
  reweld: 'Re-weld',
  after: 'Before and after the arc',
  layers: 'Gauged on the way',
  passes: 'Passes as run',
  stations: 'Stations gauged',
  recuts: 'Cut again',
  files: 'Files measured',
  'gauge_check.readings': 'Readings of the block',
};

/** Version of the file: it is no choice of the person. */
const NOT_SHOWN = new Set(['furrow', 'furrow_kit', 'furrow_readings']);

/**
 * Arranges the fields of a file in groups: those at the top first, then the groups of the file; groups that are `first` stand
 * before all others, in that order.
 */
export function formGroups(
  fields: readonly JobField[],
  title = 'Job',
  first: readonly string[] = [],
): readonly FormGroup[] {
  const entries = entriesOf(
    '',
    fields.filter((field) => !NOT_SHOWN.has(field.path)),
  );
  const top = entries.filter((entry) => 'field' in entry);
  const groups = entries.flatMap((entry) => ('group' in entry ? [entry.group] : []));
  const ahead = first.flatMap((path) => groups.filter((group) => group.path === path));
  return [...ahead, { path: '', title, entries: top }, ...groups.filter((group) => !ahead.includes(group))];
}

/** The fields that stand directly in a group. */
export function fieldsIn(group: FormGroup): readonly JobField[] {
  return group.entries.flatMap((entry) => ('field' in entry ? [entry.field] : []));
}

function entriesOf(start: string, fields: readonly JobField[]): FormEntry[] {
  const names = new Set(fields.map((field) => field.path.slice(start.length).split('.')[0] ?? ''));
  return [...names].map((name): FormEntry => {
    const path = `${start}${name}`;
    const field = fields.find((candidate) => candidate.path === path);
    if (field !== undefined) return { field };
    const inside = fields.filter((candidate) => candidate.path.startsWith(`${path}.`));
    return { group: { path, title: titleOf(path), entries: entriesOf(`${path}.`, inside) } };
  });
}

function titleOf(path: string): string {
  const name = path.split('.').at(-1) ?? '';
  return TITLES[path] ?? `${name.charAt(0).toUpperCase()}${name.slice(1).replaceAll('_', ' ')}`;
}
