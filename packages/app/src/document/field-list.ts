import { type JobField, jobFields } from '@furrow/engine';

const FIELDS = jobFields();
const BY_PATH = new Map(FIELDS.map((field) => [field.path, field]));

/** Every field of a job, in the order of the file. */
export function fieldList(): readonly JobField[] {
  return FIELDS;
}

/** The field of a path with `*` for an index. */
export function jobFieldAt(pattern: string): JobField | undefined {
  return BY_PATH.get(pattern);
}

/** Names that a group of fields can hold, in the order of the file. */
export function namesIn(groupPattern: string): readonly string[] {
  const start = groupPattern === '' ? '' : `${groupPattern}.`;
  const names = FIELDS.filter((field) => field.path.startsWith(start)).map(
    (field) => field.path.slice(start.length).split('.')[0] ?? '',
  );
  return [...new Set(names)];
}

/** Whether a group may be missing as a whole: none of its fields is required. */
export function canBeLeftOut(groupPattern: string): boolean {
  const inside = FIELDS.filter((field) => field.path.startsWith(`${groupPattern}.`));
  return inside.length > 0 && inside.every((field) => field.optional);
}
