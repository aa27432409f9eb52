import { jobJsonSchema, kitJsonSchema, readingsJsonSchema } from '@furrow/engine';
import type { Run } from '../frame/command.ts';

/** Prints the JSON Schema of one of the files that Furrow reads. */
export const run: Run<{ readonly kit: boolean; readonly readings: boolean }> = (_args, { kit, readings }) => {
  const schema = readings ? readingsJsonSchema() : kit ? kitJsonSchema() : jobJsonSchema();
  return { exit: 0, print: JSON.stringify(schema, null, 2) };
};
