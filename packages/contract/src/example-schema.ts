import { z } from 'zod';

/** A demo job or kit that comes with the program. */
export const exampleSchema = z
  .object({
    name: z.string().describe('File name without its ending.'),
    title: z.string().describe('Title as the file states it.'),
    text: z.string().describe('The file as it is, comments included.'),
  })
  .meta({ id: 'Example' });

/** A demo job or kit that comes with the program. */
export type Example = z.output<typeof exampleSchema>;
