import { z } from 'zod';
import { keepableTextSchema } from './keepable-text.ts';

const NAME_MOST = 120;
const OBSERVED_MOST = 200;

const name = keepableTextSchema.min(1).max(NAME_MOST);

const outcomes = ['yes', 'no', 'low', 'in', 'high'] as const;

/** What was seen, by identifier of the symptom, inspection or reading of the table of faults. */
export const faultEvidenceSchema = z
  .record(name, z.enum([...outcomes, 'unknown']))
  .refine((seen) => Object.keys(seen).length <= OBSERVED_MOST, `holds at most ${OBSERVED_MOST} entries`)
  .describe('What was seen, by identifier of the symptom, inspection or reading.');

/** A fault that was found: what it showed and what it turned out to be. */
export const faultCaseSchema = z
  .object({
    id: z.uuid().describe('Identifier given by whoever found it; the same one again replaces the case.'),
    cause: name.describe('Identifier of the cause it turned out to be.'),
    symptoms: faultEvidenceSchema,
  })
  .meta({ id: 'FaultCase' });

/** What the shop has counted, in the form that the table of faults is moved by. */
export const faultCountsSchema = z
  .object({
    cases: z.int().min(0).describe('Number of the cases counted.'),
    found: z.record(z.string(), z.int().min(1)).describe('Cases by identifier of the cause.'),
    seen: z
      .record(z.string(), z.record(z.string(), z.partialRecord(z.enum(outcomes), z.int().min(1))))
      .describe('Cases by cause, observable and outcome.'),
  })
  .meta({ id: 'FaultCounts' });

/** Parameters of an address that names a case. */
export const faultCaseParametersSchema = z.object({ id: z.uuid().describe('Identifier of the case.') });

/** A fault that was found. */
export type FaultCase = z.output<typeof faultCaseSchema>;

/** What the shop has counted. */
export type CountedFaults = z.output<typeof faultCountsSchema>;
