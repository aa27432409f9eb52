import { z } from 'zod';
import { bandSchema } from './prediction-schema.ts';

const gaugeRowSchema = z
  .object({
    reading_from_mm: z.number(),
    reading_to_mm: z.number().nullable(),
    action: z.enum(['run', 'done', 'ask']),
    travel_mm_per_min: z.number().nullable(),
    expected_depth_mm: bandSchema,
    depth_reached: z.number(),
    not_too_deep: z.number(),
  })
  .meta({ id: 'GaugeRow', description: 'A reading and what to do about it.' });

/** A stop to measure the groove before the next layer, with its decision table. */
export const gaugeStopSchema = z
  .object({
    after_layer: z.int(),
    stations: z.int(),
    station_positions_mm: z.array(z.number()),
    reading_sd_mm: z.number(),
    table: z.array(gaugeRowSchema),
    stations_choice: z.array(
      z.object({ stations: z.int(), depth_reached: z.number(), not_too_deep: z.number() }),
    ),
  })
  .meta({ id: 'GaugeStop' });
