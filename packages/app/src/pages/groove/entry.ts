import { parseAmount, type UnitSystem } from '@furrow/engine';
import { isBareNumber } from '../../sheet/form/index.ts';

/** A number of a reading. */
export type EntryField = 'at' | 'depth' | 'width' | 'root_radius';

/** A reading as it is typed. */
export type Entry = Readonly<Record<EntryField | 'note', string>>;

/** A reading of which nothing is typed yet. */
export const EMPTY_ENTRY: Entry = { at: '', depth: '', width: '', root_radius: '', note: '' };

/** The numbers of a reading in the order in which they are typed. */
export const ENTRY_FIELDS: readonly {
  readonly field: EntryField;
  readonly title: string;
  readonly required: boolean;
}[] = [
  { field: 'at', title: 'From the start', required: true },
  { field: 'depth', title: 'Depth', required: true },
  { field: 'width', title: 'Width', required: false },
  { field: 'root_radius', title: 'Root radius', required: false },
];

/** The unit that a number typed alone is meant in: a tape reads metres or inches, a gauge millimetres or inches. */
export function unitOf(field: EntryField, units: UnitSystem): string {
  if (units === 'inch') return 'in';
  return field === 'at' ? 'm' : 'mm';
}

/** What goes into the record for what was typed; empty where nothing was. */
function written(field: EntryField, text: string, units: UnitSystem): string {
  const typed = text.trim();
  return isBareNumber(typed) || /^\d+[.,]\d+$/u.test(typed) ? `${typed} ${unitOf(field, units)}` : typed;
}

/** What is wrong with each number, in words. */
export function entryIssues(
  entry: Entry,
  units: UnitSystem,
  length: number | undefined,
): Partial<Record<EntryField, string>> {
  const issues: Partial<Record<EntryField, string>> = {};
  for (const { field, title, required } of ENTRY_FIELDS) {
    const text = written(field, entry[field], units);
    if (text === '') {
      if (required) issues[field] = `${title} is asked for.`;
      continue;
    }
    const read = parseAmount(text, 'length');
    if (!read.ok) issues[field] = read.issues[0]?.message ?? 'This is no length.';
    else if (read.value < 0) issues[field] = `${title} cannot be below 0.`;
    else if (field === 'at' && length !== undefined && read.value > length * (1 + 1e-9))
      issues[field] = 'This place lies beyond the end of the seam.';
    else if (field !== 'at' && (read.value > 1 || (read.value === 0 && field !== 'depth')))
      issues[field] = `${title} cannot be that.`;
  }
  return issues;
}

/** The reading as the record has it. */
export function stationOf(
  entry: Entry,
  units: UnitSystem,
  {
    by,
    when,
    recuts,
    afterPass,
  }: {
    readonly by: string;
    readonly when: string;
    readonly recuts: number;
    /** Pass after which it was gauged, where others were still to come. */
    readonly afterPass: number | undefined;
  },
): Readonly<Record<string, string | number>> {
  const amounts = ENTRY_FIELDS.flatMap(({ field }) => {
    const text = written(field, entry[field], units);
    return text === '' ? [] : [[field, text] as const];
  });
  return {
    ...Object.fromEntries(amounts),
    ...(afterPass !== undefined && { after_pass: afterPass }),
    ...(recuts > 0 && { after_recut: recuts }),
    ...(by.trim() !== '' && { by: by.trim() }),
    when,
    ...(entry.note.trim() !== '' && { note: entry.note.trim() }),
  };
}
