import { z } from 'zod';

/** A demo job or kit that comes with the program. */
export const exampleSchema = z
  .object({ name: z.string().describe('File name without its ending.'), title: z.string(), text: z.string() })
  .meta({ id: 'Example' });

/** A demo job or kit that comes with the program. */
export type Example = z.output<typeof exampleSchema>;
