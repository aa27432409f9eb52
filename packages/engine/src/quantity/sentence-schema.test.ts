import { expect, it } from 'vitest';
import { z } from 'zod';
import { amountOf, say } from './index.ts';
import { sentenceSchema } from './sentence-schema.ts';

it('is text for other programs, and words with amounts inside this one', () => {
  const schema = z.object({ remedy: sentenceSchema });
  expect(z.toJSONSchema(schema, { unrepresentable: 'any' })).toMatchObject({
    properties: { remedy: { type: 'string' } },
  });
  expect(schema.safeParse({ remedy: say`${amountOf(1, 'length')} less` }).success).toBe(true);
  expect(schema.safeParse({ remedy: 'less' }).success).toBe(true);
  expect(schema.safeParse({ remedy: 3 }).success).toBe(false);
});
