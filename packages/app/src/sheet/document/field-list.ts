import type { JobField } from '@furrow/engine';

/** The fields that a kind of file can have. */
export interface FieldList {
  /** Name under which a file states its version, which no form shows. */
  readonly version: string;
  /** Every field, in the order of the file. */
  readonly all: readonly JobField[];
  /** The field of a path with `*` for an index. */
  readonly at: (pattern: string) => JobField | undefined;
  /** Names that a group of fields can hold, in the order of the file. */
  readonly namesIn: (groupPattern: string) => readonly string[];
  /** Whether a group may be missing as a whole: none of its fields is required. */
  readonly canBeLeftOut: (groupPattern: string) => boolean;
}

/** Makes the fields of a kind of file findable; its version stands under a name of its own. */
export function fieldListOf(all: readonly JobField[], version: string): FieldList {
  const byPath = new Map(all.map((field) => [field.path, field]));
  return {
    version,
    all,
    at: (pattern) => byPath.get(pattern),
    namesIn(groupPattern) {
      const start = groupPattern === '' ? '' : `${groupPattern}.`;
      const names = all
        .filter((field) => field.path.startsWith(start))
        .map((field) => field.path.slice(start.length).split('.')[0] ?? '');
      return [...new Set(names)];
    },
    canBeLeftOut(groupPattern) {
      const inside = all.filter((field) => field.path.startsWith(`${groupPattern}.`));
      return inside.length > 0 && inside.every((field) => field.optional);
    },
  };
}
