import { z } from 'zod';

/** What UTF-8 or a database cannot keep to the letter: halves of a surrogate pair, and the null character. */
const UNKEEPABLE = /[\p{Surrogate}\0]/u;

/** Text that every database keeps to the letter. */
export const keepableTextSchema = z
  .string()
  .refine((value) => !UNKEEPABLE.test(value), 'holds characters that cannot be saved');
