import { z } from 'zod';
import { fieldFacts } from './field.ts';
import { unitOfKey } from './unit-keys.ts';

/** One default that stood in for a field the file does not have. */
export const defaultUsedSchema = z
  .object({
    path: z.string().describe('Path of the field.'),
    value: z.union([z.string(), z.number()]).describe('What stood in, as a file would have it [as written].'),
    why: z.string().describe('Why that value.'),
  })
  .readonly()
  .meta({ id: 'DefaultUsed', description: 'One default that stood in for a field the file does not have.' });

/** One default that stood in for a field the file does not have. */
export type DefaultUsed = z.output<typeof defaultUsedSchema>;

/** A path in a document: names and indexes. */
export type DocumentPath = readonly (string | number)[];

/** A document with keyed units written out and defaults filled in, and how it came to be. */
export interface CompletedDocument {
  readonly value: unknown;
  readonly defaultsUsed: readonly DefaultUsed[];
  /** Paths as the file has them, by the path after renaming (`plate.thickness` -> `plate.thickness_mm`). */
  readonly writtenAs: ReadonlyMap<string, DocumentPath>;
}

/** Writes keyed units out as amounts and fills defaults in, listing each. */
export function completeDocument(schema: z.ZodType, document: unknown): CompletedDocument {
  const defaultsUsed: DefaultUsed[] = [];
  const writtenAs = new Map<string, DocumentPath>();
  const value = complete(schema, document, [], [], { document, defaultsUsed, writtenAs });
  return { value, defaultsUsed, writtenAs };
}

interface Records {
  /** The whole document as written. */
  readonly document: unknown;
  readonly defaultsUsed: DefaultUsed[];
  readonly writtenAs: Map<string, DocumentPath>;
}

function complete(
  schema: z.ZodType,
  value: unknown,
  path: DocumentPath,
  written: DocumentPath,
  records: Records,
): unknown {
  if (schema instanceof z.ZodOptional) {
    return complete(schema.unwrap() as z.ZodType, value, path, written, records);
  }
  if (schema instanceof z.ZodArray && Array.isArray(value)) {
    return value.map((item, index) =>
      complete(schema.element as z.ZodType, item, [...path, index], [...written, index], records),
    );
  }
  if (schema instanceof z.ZodObject && isRecord(value))
    return completeObject(schema, value, path, written, records);
  return value;
}

function completeObject(
  schema: z.ZodObject,
  value: Record<string, unknown>,
  path: DocumentPath,
  written: DocumentPath,
  records: Records,
): Record<string, unknown> {
  const fields = schema.shape as Record<string, z.ZodType>;
  const result: Record<string, unknown> = Object.create(null);
  for (const [key, item] of Object.entries(value)) {
    const renamed = Object.hasOwn(fields, key) ? undefined : keyedUnit(fields, key, item);
    // A field stated twice, plainly or under two units, stays as written and is then told as unknown.
    const taken =
      renamed !== undefined && (Object.hasOwn(value, renamed.field) || Object.hasOwn(result, renamed.field));
    const target = renamed === undefined || taken ? key : renamed.field;
    const content = renamed === undefined || target === key ? item : renamed.text;
    records.writtenAs.set(pathText([...path, target]), [...written, key]);
    const field = Object.hasOwn(fields, target) ? fields[target] : undefined;
    result[target] =
      field === undefined ? content : complete(field, content, [...path, target], [...written, key], records);
  }
  for (const [name, field] of Object.entries(fields)) {
    if (Object.hasOwn(result, name) && result[name] !== null) continue;
    const facts = fieldFacts.get(field);
    if (facts?.fallback !== undefined) {
      const { text, why } =
        typeof facts.fallback === 'function' ? facts.fallback(records.document) : facts.fallback;
      result[name] = text;
      records.defaultsUsed.push({ path: pathText([...path, name]), value: text, why });
    } else if (field instanceof z.ZodObject && canBeLeftOut(field)) {
      result[name] = completeObject(field, {}, [...path, name], [...written, name], records);
    } else if (field instanceof z.ZodOptional) {
      delete result[name];
    }
  }
  return result;
}

/** Whether a group of fields may be missing as a whole: each of them has a default or is optional. */
export function canBeLeftOut(schema: z.ZodObject): boolean {
  return Object.values(schema.shape as Record<string, z.ZodType>).every(
    (field) =>
      field instanceof z.ZodOptional ||
      fieldFacts.get(field)?.fallback !== undefined ||
      (field instanceof z.ZodObject && canBeLeftOut(field)),
  );
}

function keyedUnit(
  fields: Record<string, z.ZodType>,
  key: string,
  item: unknown,
): { field: string; text: string } | undefined {
  if (typeof item !== 'number' || !Number.isFinite(item)) return undefined;
  for (const [name, field] of Object.entries(fields)) {
    const kind = fieldFacts.get(field instanceof z.ZodOptional ? (field.unwrap() as z.ZodType) : field)?.kind;
    const unit = kind === undefined ? undefined : unitOfKey(key, name, kind);
    if (unit !== undefined) return { field: name, text: `${plainDecimal(item)} ${unit}` };
  }
  return undefined;
}

/** A number without exponent, as an amount is written. */
function plainDecimal(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(12) : text;
}

/**
 * A path as people write it.
 *
 * @param path - names and indexes [list], may be empty
 * @returns the path in words, empty for the whole document [text]
 * @source none: bookkeeping
 * @example
 * pathText(['kit', 'electrodes', 0, 'diameter']) // => "kit.electrodes[0].diameter"
 */
export function pathText(path: DocumentPath): string {
  return path.reduce<string>(
    (text, part) => (typeof part === 'number' ? `${text}[${part}]` : text === '' ? part : `${text}.${part}`),
    '',
  );
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
