import type { z } from 'zod';

type ReadonlyDeep<Value> = Value extends readonly (infer Entry)[]
  ? readonly ReadonlyDeep<Entry>[]
  : Value extends object
    ? { readonly [Key in keyof Value]: ReadonlyDeep<Value[Key]> }
    : Value;

/** What a schema of a result describes: the type is inferred, so that a result is stated once. */
export type Stated<Schema extends z.ZodType> = ReadonlyDeep<z.output<Schema>>;
