import { z } from 'zod';
import { bandSchema } from './prediction.ts';

const levelSchema = z
  .object({
    p05: z.number().describe('5th percentile of the standard deviation [-].'),
    p50: z.number().describe('Median of the standard deviation [-].'),
    p95: z.number().describe('95th percentile of the standard deviation [-].'),
    from: z.string().describe('What it comes from, in words.'),
  })
  .meta({ id: 'SpreadLevel', description: 'A standard deviation of ln depth, with its interval.' });

const familySchema = z
  .object({
    family: z.string().describe('Metal, position, electrode and torch in one name.'),
    metal: z.string().describe('Metal, as the job names it.'),
    position: z.string().describe('Position of the work, as the job names it.'),
    electrode_kind: z.string().describe('Kind of electrode, as the job names it.'),
    size_band: z.string().describe('Electrode sizes learned together: small, middle or large.'),
    torch: z.string().nullable().describe('Torch; null where none is named.'),
    trials: z.int().describe('Trials of this family.'),
    jobs: z.int().describe('Gauged jobs of this family.'),
    readings: z.int().describe('Depth readings of them.'),
    doubt: z
      .number()
      .describe('Standard deviation of ln depth that is not known of this family at its usual setting [-].'),
    levels: z
      .object({ family: levelSchema, job: levelSchema, pass: levelSchema, seam: levelSchema })
      .describe('The four standard deviations of ln depth.'),
  })
  .meta({ id: 'FamilyKnowledge', description: 'What is known of one kind of work.' });

const scoredSchema = z
  .object({
    entry: z.string().describe('Identifier of the entry.'),
    date: z.string().describe('Day [ISO date].'),
    predicted_mm: bandSchema.describe('Mean depth of the first pass as predicted from the entries before.'),
    measured_mm: z.number().describe('Mean depth that was measured.'),
    inside: z.boolean().describe('Inside the 90 % band.'),
    place: z.number().describe('Share of the prediction below what was measured [-].'),
    crps: z.number().describe('Continuous ranked probability score of ln depth; less is better [-].'),
  })
  .meta({
    id: 'ScoredEntry',
    description: 'A prediction made before the cut was measured, and the reading.',
  });

/** What a shop knows, as it leaves the engine. */
export const knowledgeReportSchema = z
  .object({
    knowledge: z
      .object({
        id: z.string().describe('Identifier.'),
        trials: z.int().describe('Trials it has learned from.'),
        jobs: z.int().describe('Gauged jobs it has learned from.'),
        date: z.string().nullable().describe('Day [ISO date].'),
        invented: z.literal(true).exactOptional().describe('Made up, to try the program with.'),
      })
      .describe('The name by which results call it.'),
    shop: z.string().describe('Name of the shop.'),
    families: z.array(familySchema),
    seam_range_mm: z.number().describe('Range of the process along the seam, Matern 3/2.'),
    scores: z.object({
      predictions: z.int().describe('Predictions scored.'),
      inside_90: z.int().describe('Of them inside their 90 % band.'),
      crps_mean: z.number().nullable().describe('Mean score of ln depth; null without predictions [-].'),
      entries: z.array(scoredSchema),
    }),
    drift: z.object({
      sum: z.number().describe('Cumulative sum of standardised residuals beyond the allowance [-].'),
      limit: z.number().describe('Sum at which it is called a drift [-].'),
      since: z.string().nullable().describe('Entry since which it has built up; null where there is none.'),
      row: z.int().describe('Latest entries in a row that came out on the same side of what was predicted.'),
      row_off_mm: z.number().describe('Their mean depth less the one predicted.'),
      says: z.string().describe('In words.'),
    }),
    outliers: z
      .array(
        z.object({
          entry: z.string().describe('Identifier of the entry.'),
          what: z.string().describe('What it is, in words.'),
          weight: z.number().describe('Weight left to it, 1 for a good one [-].'),
        }),
      )
      .describe('What does not fit the rest and is weighed down; nothing is dropped.'),
    taken_out: z.array(
      z.object({
        entry: z.string().describe('Identifier of the entry.'),
        date: z.string().describe('Day [ISO date].'),
        reason: z.string().describe('Why, as somebody wrote it.'),
      }),
    ),
    corrected: z.array(
      z.object({
        entry: z.string().describe('Identifier of the entry.'),
        date: z.string().describe('Day [ISO date].'),
        reason: z.string().describe('Why, as somebody wrote it.'),
      }),
    ),
  })
  .meta({ id: 'KnowledgeReport', description: 'What a shop has learned, and how its predictions fared.' });

/** What a shop knows, as it leaves the engine. */
export type KnowledgeReport = z.infer<typeof knowledgeReportSchema>;

/** The next trial, as it leaves the engine. */
export const nextTrialSchema = z
  .object({
    metal: z.string().describe('Metal, as the job names it.'),
    position: z.string().describe('Position of the work, as the job names it.'),
    torch: z.string().nullable().describe('Torch; null where none is named.'),
    electrode_diameter_mm: z.number().describe('Diameter of the electrode.'),
    electrode_kind: z.string().describe('Kind of electrode, as the job names it.'),
    current_A: z.number().describe('Current that is set.'),
    arc_voltage_V: z.number().describe('Arc voltage that is set.'),
    travel_mm_per_min: z.number().describe('Travel that is set.'),
    push_angle_deg: z.number().describe('Angle of the electrode to the surface.'),
    length_mm: z.number().describe('Length along the seam.'),
    stations: z.int().describe('Places to gauge, spread evenly.'),
    depth_mm: bandSchema.describe('What it is expected to give.'),
    time_s: z.number().describe('Laying out, arc and gauging.'),
    doubt_before: z
      .number()
      .describe('Standard deviation of ln depth that is not known of the jobs at hand, before it [-].'),
    doubt_after: z.number().describe('The same after it, on the mean [-].'),
    takes_off_per_min: z.number().describe('Variance of ln depth that it takes off, per minute [-].'),
    leaves_window: z
      .number()
      .describe('Chance that it comes out deeper than one pass may be; no setting is safe [-].'),
  })
  .meta({ id: 'NextTrial', description: 'The trial that teaches most per minute for the jobs at hand.' });

/** The next trial, as it leaves the engine. */
export type NextTrialReport = z.infer<typeof nextTrialSchema>;
