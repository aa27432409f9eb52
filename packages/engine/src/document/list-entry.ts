/** An entry of a list with its place in it. */
export interface PlacedEntry {
  readonly entry: unknown;
  /** Place in the list, from 0 [-]. */
  readonly index: number;
}

/** Whether two contents are lists of records, as a list that is not stated counts too. */
export function isEntries(value: unknown): value is readonly unknown[] | undefined {
  return value === undefined || (Array.isArray(value) && value.every((entry) => isRecord(entry)));
}

/** The entries by what names them; of entries with one name the second is `… (2)`. */
export function labelled(
  entries: readonly unknown[] | undefined,
  label: (entry: unknown) => string,
): Map<string, PlacedEntry> {
  const found = new Map<string, PlacedEntry>();
  for (const [index, entry] of (entries ?? []).entries()) {
    const name = label(entry);
    let key = name;
    for (let count = 2; found.has(key); count += 1) key = `${name} (${count})`.trim();
    found.set(key, { entry, index });
  }
  return found;
}

/** The names in the order of the list. */
export function byPlace(entries: ReadonlyMap<string, PlacedEntry>): string {
  return [...entries.keys()].join(', ');
}

/** What one entry of a list is called: `crews` -> `crew`. */
export function singular(list: string): string {
  return list.endsWith('ies') ? `${list.slice(0, -3)}y` : list.replace(/s$/u, '');
}

/** A field of a record; undefined where there is none, or no record. */
export function ownValue(record: unknown, name: string): unknown {
  return isRecord(record) && Object.hasOwn(record, name) ? record[name] : undefined;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
