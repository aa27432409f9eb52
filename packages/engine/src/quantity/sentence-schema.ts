import { z } from 'zod';
import type { Sentence } from './sentence.ts';

/**
 * A sentence in a result: inside the program its amounts are in SI until the reader's units are known, in JSON it is text.
 */
export const sentenceSchema = z
  .custom<Sentence>(
    (value) => typeof value === 'string' || (typeof value === 'object' && value !== null && 'say' in value),
  )
  .meta({ type: 'string', description: 'Words for a person.' });
