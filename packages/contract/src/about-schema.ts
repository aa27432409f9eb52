import { z } from 'zod';

/** What runs here and where it keeps its data. */
export const aboutSchema = z
  .object({
    program_version: z.string().describe('Version of the program that runs.'),
    data_folder: z.string().describe('Folder that holds the database; for PostgreSQL, its host and name.'),
    store: z.enum(['sqlite', 'postgresql']).describe('Database that keeps the data.'),
  })
  .meta({ id: 'About' });

/** What runs here and where it keeps its data. */
export type About = z.output<typeof aboutSchema>;
