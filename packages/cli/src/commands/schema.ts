import {
  gaugeJsonSchema,
  jobJsonSchema,
  kitJsonSchema,
  loggerJsonSchema,
  type ResultName,
  readingsJsonSchema,
  resultJsonSchema,
  summaryJsonSchema,
  trialsJsonSchema,
} from '@furrow/engine';
import type { Run } from '../frame/command.ts';

interface SchemaOptions {
  readonly kit: boolean;
  readonly readings: boolean;
  readonly trials: boolean;
  readonly summary: boolean;
  readonly gauge: boolean;
  readonly logger: boolean;
  /** Command whose result is described, in place of a file. */
  readonly result?: ResultName;
}

/** Prints the JSON Schema of one of the files that Furrow reads, or of what a command writes. */
export const run: Run<SchemaOptions> = (_args, options) => ({
  exit: 0,
  print: JSON.stringify(schemaOf(options), null, 2),
});

function schemaOf({ kit, readings, trials, summary, gauge, logger, result }: SchemaOptions): object {
  if (result !== undefined) return resultJsonSchema(result);
  if (summary) return summaryJsonSchema();
  if (logger) return loggerJsonSchema();
  if (gauge) return gaugeJsonSchema();
  if (trials) return trialsJsonSchema();
  if (readings) return readingsJsonSchema();
  return kit ? kitJsonSchema() : jobJsonSchema();
}
