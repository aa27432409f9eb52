import { jobJsonSchema, kitJsonSchema, readingsJsonSchema, trialsJsonSchema } from '@furrow/engine';
import type { Run } from '../frame/command.ts';

/** Prints the JSON Schema of one of the files that Furrow reads. */
export const run: Run<{ readonly kit: boolean; readonly readings: boolean; readonly trials: boolean }> = (
  _args,
  { kit, readings, trials },
) => {
  const schema = trials
    ? trialsJsonSchema()
    : readings
      ? readingsJsonSchema()
      : kit
        ? kitJsonSchema()
        : jobJsonSchema();
  return { exit: 0, print: JSON.stringify(schema, null, 2) };
};
