import { issueSchema } from '@furrow/engine';
import { z } from 'zod';
import { savedBySchema } from './history-schema.ts';
import { keepableTextSchema } from './keepable-text.ts';
import { basedOnFromNoneSchema, REVISION_MOST, revisionFromNoneSchema } from './revision-number.ts';

/** What sets one file that a shop has one of apart from another. */
interface ShopFile<Code extends string> {
  /** What its schemas are called by. */
  readonly id: string;
  /** What it is called in descriptions. */
  readonly noun: string;
  /** Code of a save that would have overwritten a newer one. */
  readonly changed: Code;
}

/** Schemas of a file that a shop has one of, kept with every revision: its kit, and what it has tried and gauged. */
function shopFileSchemas<Code extends string>({ id, noun, changed }: ShopFile<Code>) {
  const fields = {
    title: z.string().describe(`What the ${noun} states as title; empty as long as nothing was saved.`),
    revision: z
      .string()
      .nullable()
      .describe(`Content hash of the ${noun} as read, defaults included; null for a draft or for none.`),
  };
  const saved = z
    .object({
      ...fields,
      revision_number: revisionFromNoneSchema,
      saved_at: z.iso.datetime().nullable().describe('When it was saved; null as long as nothing was.'),
      saved_by: savedBySchema,
      text: z.string().describe(`The ${noun} file as written; empty as long as nothing was saved.`),
      valid: z.boolean().describe(`Whether jobs can be planned with the ${noun} as it stands.`),
      issues: z
        .array(issueSchema)
        .describe('What is wrong with the text; empty when valid or not saved yet.'),
    })
    .meta({ id: `Saved${id}` });
  const summary = z
    .object({
      ...fields,
      revision_number: z.int().min(1),
      saved_at: z.iso.datetime(),
      saved_by: savedBySchema,
    })
    .meta({ id: `${id}RevisionSummary` });
  return {
    saved,
    summary,
    revision: z
      .object({ ...summary.shape, text: z.string().describe(`The ${noun} file as saved then.`) })
      .meta({ id: `${id}Revision` }),
    save: z
      .object({
        text: keepableTextSchema.describe(`The ${noun} file, YAML or JSON.`),
        based_on: basedOnFromNoneSchema,
      })
      .meta({ id: `${id}Save` }),
    conflict: z
      .object({
        code: z.literal(changed),
        message: z.string(),
        newer: saved.describe(`The ${noun} as it is saved now.`),
      })
      .meta({ id: `${id}Conflict` }),
  };
}

/** The shop's kit: one, reused by every job. A draft with mistakes is kept as well. */
export const kitSchemas = shopFileSchemas({ id: 'Kit', noun: 'kit', changed: 'KIT_CHANGED_MEANWHILE' });

/** What the shop has tried and gauged, which its knowledge is learned from. */
export const knowledgeSchemas = shopFileSchemas({
  id: 'Trials',
  noun: 'trials',
  changed: 'KNOWLEDGE_CHANGED_MEANWHILE',
});

/** The gauge of the shop: its study and its checks. */
export const gaugeSchemas = shopFileSchemas({
  id: 'Gauge',
  noun: 'gauge',
  changed: 'GAUGE_CHANGED_MEANWHILE',
});

/** What was run and gauged on a job: one file for each. */
export const readingsSchemas = shopFileSchemas({
  id: 'Readings',
  noun: 'readings',
  changed: 'READINGS_CHANGED_MEANWHILE',
});

/** Parameters of an address that names a revision of such a file. */
export const shopFileRevisionSchema = z.object({
  number: z.coerce.number().int().min(1).max(REVISION_MOST).describe('Number of the revision.'),
});

/** Schemas of a file that a shop has one of. */
export type ShopFileSchemas =
  | typeof kitSchemas
  | typeof knowledgeSchemas
  | typeof gaugeSchemas
  | typeof readingsSchemas;

/** A file that a shop has one of, as it is saved. */
export type SavedShopFile = z.output<typeof kitSchemas.saved>;

/** One line of its history. */
export type ShopFileRevisionSummary = z.output<typeof kitSchemas.summary>;

/** Body of a request that saves it. */
export type ShopFileSave = z.input<typeof kitSchemas.save>;

/** Body of the answer to a save that would have overwritten a newer one. */
export type ShopFileConflict = z.output<ShopFileSchemas['conflict']>;
