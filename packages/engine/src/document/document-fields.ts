import { z } from 'zod';
import type { QuantityKind } from '../quantity/index.ts';
import { fieldFacts, fixedFallback } from './field.ts';

/** One field of a document as a form shows it. */
export interface DocumentField {
  /** Path with `*` for an index: `kit.electrodes.*.diameter`. */
  readonly path: string;
  readonly title: string;
  readonly help: string;
  /** How it is entered. */
  readonly entry: 'amount' | 'choice' | 'text' | 'number';
  /** Kind of amount, where `entry` is `amount`. */
  readonly kind?: QuantityKind;
  /** Greatest amount accepted, where `entry` is `amount` [SI unit of the kind]. */
  readonly most?: number;
  /** What may be chosen, where `entry` is `choice`. */
  readonly options?: readonly string[];
  /** Whether it may be left empty: it has a default or is optional. */
  readonly optional: boolean;
  /** What stands in when it is empty, as a file would have it [as written]. */
  readonly fallback?: string | number;
}

/**
 * Every field of a document, in the order of the file.
 *
 * @param schema - the schema of the document [record], made of the fields of this room
 * @returns the fields [list]
 * @source none: bookkeeping
 * @example
 * const width = amount('length', { least: 0, most: 1 }, { title: 'Width', help: 'How wide.' });
 * documentFields(z.object({ width }))[0].entry // => "amount"
 */
export function documentFields(schema: z.ZodObject): readonly DocumentField[] {
  const fields: DocumentField[] = [];
  collect(schema, [], false, fields);
  return fields;
}

function collect(
  schema: z.ZodType,
  path: readonly string[],
  optional: boolean,
  fields: DocumentField[],
): void {
  if (schema instanceof z.ZodOptional) {
    collect(schema.unwrap() as z.ZodType, path, true, fields);
    return;
  }
  if (schema instanceof z.ZodArray) {
    collect(schema.element as z.ZodType, [...path, '*'], false, fields);
    return;
  }
  if (schema instanceof z.ZodObject) {
    for (const [name, field] of Object.entries(schema.shape as Record<string, z.ZodType>)) {
      collect(field, [...path, name], optional, fields);
    }
    return;
  }
  const facts = fieldFacts.get(schema);
  const fallback = fixedFallback(facts);
  const at = path.join('.');
  const options = schema instanceof z.ZodEnum ? schema.options.map(String) : undefined;
  const entry =
    facts?.kind !== undefined
      ? 'amount'
      : options
        ? 'choice'
        : schema instanceof z.ZodString
          ? 'text'
          : 'number';
  fields.push({
    path: at,
    title: facts?.title ?? at,
    help: facts?.help ?? '',
    entry,
    ...(facts?.kind === undefined ? {} : { kind: facts.kind }),
    ...(facts?.most === undefined ? {} : { most: facts.most }),
    ...(options === undefined ? {} : { options }),
    optional: optional || facts?.fallback !== undefined,
    ...(fallback === undefined ? {} : { fallback: fallback.text }),
  });
}
