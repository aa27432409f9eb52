import { z } from 'zod';
import type { IssueCode } from '../issue/index.ts';
import {
  type Amount,
  boundOf,
  parseAmount,
  type QuantityKind,
  type Sentence,
  say,
  sentenceText,
} from '../quantity/index.ts';

/** What a form, a message and the list of defaults need to know of a field. */
export interface FieldFacts {
  readonly title: string;
  readonly help: string;
  /** Kind of amount, for fields written with a unit. */
  readonly kind?: QuantityKind;
  /** Greatest amount accepted [SI unit of the kind]. */
  readonly most?: number;
  /** What stands in when the field is missing; a function where it hangs on the rest of the document as written. */
  readonly fallback?: Fallback | ((document: unknown) => Fallback);
}

/** Text that stands in for a missing field, and why that one. */
export interface Fallback {
  /** The text, as a file would have it [as written]. */
  readonly text: string | number;
  readonly why: string;
}

/** The text that stands in for a field whatever else the document says; undefined where there is no such text. */
export function fixedFallback(facts: FieldFacts | undefined): Fallback | undefined {
  return typeof facts?.fallback === 'function' ? undefined : facts?.fallback;
}

/** Facts of every field, kept beside the schema so that one declaration serves file, form and documentation. */
export const fieldFacts = z.registry<FieldFacts>();

/** Parameters of a schema issue that turn it into an issue for a person. */
export interface IssueParams {
  /** Code of the issue; that of a value not accepted if not stated. */
  readonly furrow?: IssueCode;
  readonly read?: string;
  /** The message, where amounts stand in it. */
  readonly says?: Sentence;
  readonly accepted?: Sentence;
  readonly nearest?: Sentence;
}

/** What arithmetic in another unit may add to an amount at a bound, as a share of it [1]. */
const ARITHMETIC = 1e-9;

interface AmountRange {
  /** Least accepted value, SI. */
  readonly least: number;
  /** Greatest accepted value, SI. */
  readonly most: number;
}

/**
 * A field for an amount written with its unit; the parsed value is SI.
 *
 * @param kind - kind of quantity [text], one of the QuantityKind names
 * @param range - least and greatest accepted value [SI unit of the kind], least <= most
 * @param facts - title, help and fallback [record], any
 * @returns the field [record]
 * @source none: bookkeeping
 * @example
 * amount('length', { least: 0, most: 1 }, { title: 'Length', help: 'How long.' }).parse('40 mm') // => 0.04
 */
export function amount(
  kind: QuantityKind,
  range: AmountRange,
  facts: Omit<FieldFacts, 'kind' | 'most'>,
): z.ZodPipe<z.ZodString, z.ZodTransform<number, string>> {
  const shown = (side: 'least' | 'most'): Amount => boundOf(range[side], kind, side);
  const schema = z.string().transform((text, context): number => {
    const outcome = parseAmount(text, kind);
    if (!outcome.ok) {
      for (const issue of outcome.issues) {
        const params: IssueParams = {
          furrow: issue.code,
          read: text,
          ...(issue.accepted === undefined ? {} : { accepted: issue.accepted }),
          ...(issue.nearest === undefined ? {} : { nearest: issue.nearest }),
        };
        context.addIssue({ code: 'custom', message: issue.message, params: { ...params } });
      }
      return z.NEVER;
    }
    const { value } = outcome;
    const within = Math.min(Math.max(value, range.least), range.most);
    // 99.9 % comes out as 0.9990000000000001
    if (Math.abs(value - within) <= ARITHMETIC * Math.abs(value)) return within;
    const accepted = say`${shown('least')} to ${shown('most')}`;
    const nearest = say`${shown(value < range.least ? 'least' : 'most')}`;
    const says = say`${facts.title}: “${text}” is outside what is accepted here, ${accepted}.`;
    const params: IssueParams = { furrow: 'AMOUNT_RANGE', read: text, says, accepted, nearest };
    context.addIssue({ code: 'custom', message: sentenceText(says, 'both'), params: { ...params } });
    return z.NEVER;
  });
  return described(schema, { ...facts, kind, most: range.most });
}

/**
 * Registers a field's facts, for the form and the defaults as well as for the published JSON Schema.
 *
 * @param schema - the field [record], any
 * @param facts - title, help, kind and fallback [record], any
 * @returns the same field [record]
 * @source none: bookkeeping
 * @example
 * const length = amount('length', { least: 0, most: 1 }, { title: 'Length', help: 'How long.' });
 * described(length, { title: 'Width', help: 'How wide.' }).description // => "How wide."
 */
export function described<T extends z.ZodType>(schema: T, facts: FieldFacts): T {
  fieldFacts.add(schema, facts);
  const fallback = fixedFallback(facts);
  z.globalRegistry.add(schema, {
    title: facts.title,
    description: facts.help,
    ...(fallback === undefined ? {} : { default: fallback.text }),
  });
  return schema;
}
