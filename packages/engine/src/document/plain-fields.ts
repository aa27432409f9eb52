import { z } from 'zod';
import { described, type FieldFacts, type IssueParams } from './field.ts';
import { UNPRINTABLE } from './printable.ts';

const PRINTABLE: IssueParams = { accepted: 'printable text' };

/** A line or a few of printable text. */
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

/** A whole number. */
export function count(least: number, most: number, facts: FieldFacts): z.ZodInt {
  return described(z.int().min(least).max(most), facts);
}

/** A number whose unit is in its name, or that has none. */
export function number(least: number, most: number, facts: FieldFacts): z.ZodNumber {
  return described(z.number().min(least).max(most), facts);
}
