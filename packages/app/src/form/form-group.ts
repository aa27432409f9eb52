import type { JobField } from '@furrow/engine';

/** A group of fields in the order of the file: fields of its own, and groups inside it. */
export interface FormGroup {
  /** Path of the group; empty for the fields at the top. */
  readonly path: string;
  readonly title: string;
  readonly fields: readonly JobField[];
  readonly groups: readonly FormGroup[];
}

const TITLES: Readonly<Record<string, string>> = {
  '': 'Job',
  plan: 'Planning',
  kit: 'Kit',
};

/** Version of the file: it is no choice of the person. */
const NOT_SHOWN = new Set(['furrow']);

/** Arranges the fields of a job in groups, as the file has them. */
export function formGroups(fields: readonly JobField[]): readonly FormGroup[] {
  const shown = fields.filter((field) => !NOT_SHOWN.has(field.path));
  const top = groupOf('', shown);
  return [{ ...top, groups: [] }, ...top.groups];
}

function groupOf(path: string, fields: readonly JobField[]): FormGroup {
  const start = path === '' ? '' : `${path}.`;
  const inside = fields.filter((field) => field.path.startsWith(start));
  const own = inside.filter((field) => !field.path.slice(start.length).includes('.'));
  const names = inside
    .filter((field) => !own.includes(field))
    .map((field) => field.path.slice(start.length).split('.')[0] ?? '');
  return {
    path,
    title: titleOf(path),
    fields: own,
    groups: [...new Set(names)].map((name) => groupOf(`${start}${name}`, inside)),
  };
}

function titleOf(path: string): string {
  const name = path.split('.').at(-1) ?? '';
  return TITLES[path] ?? `${name.charAt(0).toUpperCase()}${name.slice(1).replaceAll('_', ' ')}`;
}
