import { z } from 'zod';
import { described, type FieldFacts } from '../document/index.ts';

/** A field for a price or a rate of money, in the currency of the rates. */
export function price(facts: FieldFacts): z.ZodNumber {
  return described(z.number().min(0).max(1e6), facts);
}
