import { z } from 'zod';
import { gaugeStopSchema } from './gauge-stop-schema.ts';
import { limitSchema } from './limit-schema.ts';
import { bandSchema, spreadSchema } from './prediction-schema.ts';

const passSchema = z
  .object({
    number: z.int(),
    layer: z.int(),
    track: z.int(),
    offset_mm: z.number(),
    current_A: z.number(),
    arc_voltage_V: z.number(),
    push_angle_deg: z.number(),
    travel_mm_per_min: z.number(),
    set_by_gauge: z.boolean(),
    depth_mm: bandSchema,
    dwell_s: z.number(),
  })
  .meta({ id: 'PlanPass', description: 'One run of the torch along the seam.' });

const sectionSchema = z
  .object({
    offset_mm: z.array(z.number()),
    depth_p05_mm: z.array(z.number()),
    depth_p50_mm: z.array(z.number()),
    depth_p95_mm: z.array(z.number()),
  })
  .meta({ id: 'SectionBand', description: 'The predicted floor across the seam; lists of equal length.' });

/** A whole set-up: what to run, what to expect, how sure it is. */
export const planSchema = z
  .object({
    kind: z.enum(['blind', 'gauge_and_adjust']),
    dominated: z.boolean(),
    electrode_diameter_mm: z.number(),
    electrode_kind: z.enum(['plain', 'jointed']),
    tracks: z.int(),
    track_spacing_mm: z.number(),
    layers: z.int(),
    pass_length_mm: z.number(),
    passes: z.array(passSchema),
    floor_depth_mm: bandSchema,
    least_depth_mm: bandSchema,
    width_mm: bandSchema,
    root_radius_mm: z.number(),
    wall_angle_deg: z.number(),
    cusp_height_mm: z.number(),
    ligament_mm: z.object({ p05: z.number(), p50: z.number() }),
    assurance: z.object({
      depth_reached: z.number(),
      not_too_deep: z.number(),
      ligament_kept: z.number(),
      width_in_band: z.number(),
    }),
    arc_time_s: spreadSchema,
    job_time_s: spreadSchema,
    cost: spreadSchema,
    whole_cost: spreadSchema,
    currency: z.string(),
    electrodes_used: spreadSchema,
    arc_energy_kJ: z.number(),
    removed_mm3_per_mm: z.number(),
    loss_length_mm: z.number(),
    gauge_stops: z.array(gaugeStopSchema),
    electrode_changes: z.array(z.object({ pass: z.int(), at_mm: z.number() })),
    limits: z.array(limitSchema),
    section: sectionSchema,
  })
  .meta({ id: 'Plan' });
