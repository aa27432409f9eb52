import { exactAmount, formatAmount, type UnitSystem } from '../quantity/index.ts';
import type { DocumentField } from './document-fields.ts';
import { byPlace, isEntries, labelled, ownValue, singular } from './list-entry.ts';

/** One thing in which two documents of a kind differ. */
export interface DocumentDifference {
  /** Path of the field, an entry of a list by its place in the later document that has it. */
  readonly path: string;
  /** What it is, with the part of the document it belongs to. */
  readonly title: string;
  /** As it was; null where it was not there. */
  readonly before: string | null;
  /** As it is; null where it is there no more. */
  readonly after: string | null;
  /** The same in a sentence. */
  readonly words: string;
}

/** Two contents in SI, the part of the document they stand in, and its place. */
interface Pair {
  readonly before: unknown;
  readonly after: unknown;
  /** Pattern of the path, `*` for an entry. */
  readonly pattern: readonly string[];
  readonly path: string;
  /** Names of the parts and entries above. */
  readonly within: readonly string[];
}

/**
 * Tells in what two documents of a kind differ, field by field, in the order of the file.
 *
 * Entries of a list are matched by what names them, so that one put in between does not change all that follow.
 *
 * @param fields - every field of the kind of document [list], as documentFields gives them
 * @param before - content of the earlier document in SI [record], as read
 * @param after - content of the later document in SI [record], as read
 * @param system - units of the words [text], inch or metric
 * @returns the differences, none for documents with the same content [list]
 * @source none: bookkeeping
 * @example
 * documentDifference([{ path: 'plate.thickness', title: 'Thickness', kind: 'length', entry: 'amount' }], { plate: { thickness: 0.03 } }, { plate: { thickness: 0.032 } }, 'metric')[0].words // => "Plate, thickness: 30.0 mm before, 32.0 mm now."
 */
export function documentDifference(
  fields: readonly DocumentField[],
  before: unknown,
  after: unknown,
  system: UnitSystem,
): readonly DocumentDifference[] {
  return differences(fields, { before, after, pattern: [], path: '', within: [] }, system);
}

function differences(fields: readonly DocumentField[], pair: Pair, system: UnitSystem): DocumentDifference[] {
  const depth = pair.pattern.length;
  const names: string[] = [];
  for (const field of fields) {
    const name = field.path.split('.')[depth];
    if (name !== undefined && !names.includes(name)) names.push(name);
  }
  return names.flatMap((name) => {
    const pattern = [...pair.pattern, name];
    const inside = fields.filter((field) => field.path.split('.')[depth] === name);
    const next: Pair = {
      before: ownValue(pair.before, name),
      after: ownValue(pair.after, name),
      pattern,
      path: pair.path === '' ? name : `${pair.path}.${name}`,
      within: pair.within,
    };
    const field = inside.find(({ path }) => path === pattern.join('.'));
    if (field !== undefined) return leafDifference(field, next, system);
    if (inside[0]?.path.split('.')[depth + 1] === '*') return listDifferences(inside, next, system);
    return differences(inside, { ...next, within: [...pair.within, spelled(name)] }, system);
  });
}

function leafDifference(field: DocumentField, pair: Pair, system: UnitSystem): DocumentDifference[] {
  const { before, after, path, within } = pair;
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  const title = titleOf([...within, field.title]);
  let [was, is] = [shown(field, before, system), shown(field, after, system)];
  if (was === is) [was, is] = [closely(field, before, system), closely(field, after, system)];
  if (was === is) [was, is] = [exactly(field, before, system), exactly(field, after, system)];
  const words =
    was === null
      ? `${title}: ${is}, not stated before.`
      : is === null
        ? `${title}: not stated any more, ${was} before.`
        : `${title}: ${was} before, ${is} now.`;
  return [{ path, title, before: was, after: is, words }];
}

/** Entries that came, went or changed; where they are all the same, whether their order is. */
function listDifferences(
  fields: readonly DocumentField[],
  pair: Pair,
  system: UnitSystem,
): DocumentDifference[] {
  const name = pair.pattern.at(-1)!;
  const pattern = [...pair.pattern, '*'];
  const plain = fields.find(({ path }) => path === pattern.join('.'));
  if (plain !== undefined || !isEntries(pair.before) || !isEntries(pair.after)) {
    const field = plain ?? { ...fields[0]!, title: spelled(name), entry: 'text' as const };
    return leafDifference(field, pair, system);
  }
  const label = (entry: unknown): string => {
    const naming = namingField(fields, pattern.length);
    return (naming && shown(naming, ownValue(entry, naming.path.split('.').at(-1)!), system)) ?? '';
  };
  const [before, after] = [labelled(pair.before, label), labelled(pair.after, label)];
  const titled = (key: string): string =>
    titleOf([...pair.within, `${spelled(singular(name))} ${key}`.trim()]);
  const found: DocumentDifference[] = [];
  for (const [key, { entry, index }] of after) {
    const path = `${pair.path}[${index}]`;
    const earlier = before.get(key);
    if (earlier === undefined) {
      const title = titled(key);
      found.push({ path, title, before: null, after: key, words: `${title} was added.` });
      continue;
    }
    const within = [...pair.within, `${spelled(singular(name))} ${key}`.trim()];
    found.push(
      ...differences(fields, { before: earlier.entry, after: entry, pattern, path, within }, system),
    );
  }
  for (const [key, { index }] of before) {
    if (after.has(key)) continue;
    const title = titled(key);
    const path = `${pair.path}[${index}]`;
    found.push({ path, title, before: key, after: null, words: `${title} was taken out.` });
  }
  if (found.length > 0 || byPlace(before) === byPlace(after)) return found;
  const title = titleOf([...pair.within, `order of the ${name.replaceAll('_', ' ')}`]);
  const [was, is] = [byPlace(before), byPlace(after)];
  return [{ path: pair.path, title, before: was, after: is, words: `${title}: ${was} before, ${is} now.` }];
}

/** The field that names an entry: its name, else the first that every entry has to state. */
function namingField(fields: readonly DocumentField[], depth: number): DocumentField | undefined {
  const own = fields.filter(({ path }) => path.split('.').length === depth + 1);
  return own.find(({ path }) => path.endsWith('.name')) ?? own.find(({ optional }) => !optional) ?? own[0];
}

/** A part of the document as it is called in a sentence. */
function spelled(name: string): string {
  return name.replaceAll('_', ' ');
}

/** `Groove, depth, deeper by at most`: the parts, the first with a capital, the rest without. */
function titleOf(parts: readonly string[]): string {
  // a title of one or two letters is the symbol of an element
  const lower = (part: string): string =>
    /^\p{Lu}\p{Ll}/u.test(part) && part.length > 2 ? part.charAt(0).toLowerCase() + part.slice(1) : part;
  const kept = parts.map(lower).filter((part, index, all) => part !== all[index - 1]);
  const text = kept.join(', ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function shown(field: DocumentField, value: unknown, system: UnitSystem): string | null {
  if (value === undefined || value === null) return null;
  if (field.kind !== undefined && typeof value === 'number') return formatAmount(value, field.kind, system);
  if (field.entry === 'choice') return String(value).replaceAll('_', ' ');
  if (typeof value === 'string') return `“${value}”`;
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}

/** With four figures in one unit, for amounts that are shown as one and the same. */
function closely(field: DocumentField, value: unknown, system: UnitSystem): string | null {
  const text = exactly(field, value, system);
  if (text === null || field.kind === undefined) return text;
  const [number = '', ...unit] = text.split(' ');
  return [Number(Number(number).toPrecision(4)), ...unit].join(' ');
}

/** As a file would have it, for amounts that differ by less than people are shown. */
function exactly(field: DocumentField, value: unknown, system: UnitSystem): string | null {
  if (field.kind !== undefined && typeof value === 'number') return exactAmount(value, field.kind, system);
  return shown(field, value, system);
}
