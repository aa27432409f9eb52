import { z } from 'zod';
import { described, type FieldFacts, type IssueParams } from './field.ts';
import { UNPRINTABLE } from './printable.ts';

const PRINTABLE: IssueParams = { accepted: 'printable text' };

/**
 * A field for a line or a few of printable text.
 *
 * @param most - greatest number of characters [-], > 0
 * @param facts - title, help and fallback [record], any
 * @returns the field [record]
 * @source none: bookkeeping
 * @example
 * text(20, { title: 'Name', help: 'Any name.' }).parse(' A ') // => "A"
 */
export function text(most: number, facts: FieldFacts): z.ZodString {
  return described(
    z
      .string()
      .trim()
      .min(1)
      .max(most)
      .refine((content) => !UNPRINTABLE.test(content), {
        message: `${facts.title} holds a character that cannot be printed; remove it.`,
        params: { ...PRINTABLE },
      }),
    facts,
  );
}

/**
 * A field for a whole number.
 *
 * @param least - least accepted [-], a whole number
 * @param most - greatest accepted [-], >= least
 * @param facts - title, help and fallback [record], any
 * @returns the field [record]
 * @source none: bookkeeping
 * @example
 * count(1, 5, { title: 'How many', help: 'A count.' }).safeParse(6).success // => false
 */
export function count(least: number, most: number, facts: FieldFacts): z.ZodInt {
  return described(z.int().min(least).max(most), facts);
}
