import { HAZARD_WORDINGS, STATED_UNITS } from '@furrow/engine';
import { z } from 'zod';
import { limitSchema } from './limit-schema.ts';

const sourceSchema = limitSchema.shape.source;
const wording = z.enum(HAZARD_WORDINGS);
const rangeSchema = z
  .object({
    least: z.number().describe('Lower end, in the unit of the key.'),
    most: z.number().describe('Upper end, which is held against the rules, in the unit of the key.'),
  })
  .meta({
    id: 'HazardRange',
    description: 'Lower and upper end of what is not known better, in the unit of the key.',
  });
const pointSchema = z.object({ x_m: z.number(), y_m: z.number() });

const settingSchema = z
  .object({
    current_A: z
      .number()
      .describe("Greatest current of the plan, or of the job's source where there is no plan [A]."),
    of: z.enum(['plan', 'source']),
    push_angle_deg: z.number().describe('Push angle between electrode and surface [deg].'),
    arc_time_min: z
      .number()
      .nullable()
      .describe('Arc time of the whole job, 90th percentile; null without a plan [min].'),
    torches: z.number().describe('Torches burning at once [-].'),
    place: z.enum(['open_air', 'open_bay', 'closed_space']),
  })
  .meta({ id: 'HazardSetting', description: 'The setting that the hazards are told for.' });

const figureSchema = z
  .object({
    name: z.string(),
    value: z.number().nullable().describe('The figure, in `unit`; null where it is not known.'),
    unit: z.enum(STATED_UNITS),
    note: z.string(),
    source: sourceSchema,
  })
  .meta({ id: 'HazardFigure', description: 'A figure to know, held against nothing.' });

const rowSchema = z
  .object({
    id: z.string(),
    rule: z.string(),
    value: z.number().nullable().describe('What there is, in `unit`; null where it is not known.'),
    figure: z
      .number()
      .nullable()
      .describe('What the rule names, in `unit`; null where the source names none for this case.'),
    unit: z.enum(STATED_UNITS),
    sense: z.enum(['most', 'least']),
    verdict: wording,
    note: z.string(),
    source: sourceSchema,
  })
  .meta({
    id: 'HazardRow',
    description: 'A value held against the figure that a rule names, in one of three wordings.',
  });

const sectionSchema = z
  .object({
    id: z.enum(['noise', 'eyes', 'fire', 'fume', 'shock', 'field', 'air', 'space', 'heat']),
    title: z.string(),
    figures: z.array(figureSchema),
    rows: z.array(rowSchema),
    rules: z.array(z.object({ text: z.string(), source: sourceSchema })),
  })
  .meta({
    id: 'HazardSection',
    description: 'One hazard: figures, values against rules, and rules in words.',
  });

const noiseTaskSchema = z
  .object({
    name: z.string(),
    time_min: z.number().describe('How long it lasts in the shift [min].'),
    level_dBA: rangeSchema.nullable().describe('Level at the ear [dBA]; null where nothing is known of it.'),
    measured: z.boolean(),
    osha_time_min: z
      .number()
      .nullable()
      .describe('Time that the 5 dB rule sets against the upper level [min]; null where it is not known.'),
    niosh_time_min: z
      .number()
      .nullable()
      .describe('Time that the 3 dB rule sets against the upper level [min]; null where it is not known.'),
    source: sourceSchema,
  })
  .meta({ id: 'NoiseTaskReport', description: 'One task of a crew as its noise counts.' });

const protectionSchema = z.object({
  worn: z.string(),
  attenuation_dB: z
    .number()
    .nullable()
    .describe('What it takes off with its derating [dB]; null where its rating is missing.'),
  five_dB_average_dBA: z
    .number()
    .nullable()
    .describe('5 dB average at the ear under it [dBA]; null where not known.'),
  exposure_level_dBA: z
    .number()
    .nullable()
    .describe('L_EX,8h at the ear under it [dBA]; null where not known.'),
  gouging_time_min: z
    .number()
    .nullable()
    .describe(
      'Minutes of gouging a shift until 85 dBA is reached under it by the 3 dB rule, a planning figure [min]; null where not known.',
    ),
  says: z.string(),
  source: sourceSchema,
});

const crewNoiseSchema = z
  .object({
    name: z.string(),
    stated: z.boolean(),
    people: z.number().nullable().describe('People in it [-]; null where it is not stated.'),
    shift_min: z.number().describe('Length of the shift [min].'),
    quiet_min: z.number().describe('What no task fills, counted as quiet [min].'),
    tasks: z.array(noiseTaskSchema),
    missing: z.string().nullable().describe('Why there are no doses; null where there are.'),
    five_dB: z
      .object({
        pel_dose_percent: rangeSchema,
        pel_average_dBA: rangeSchema.nullable(),
        action_dose_percent: rangeSchema,
        action_average_dBA: rangeSchema.nullable(),
      })
      .nullable(),
    three_dB: z
      .object({
        dose_percent: rangeSchema,
        average_dBA: rangeSchema,
        exposure_level_dBA: rangeSchema,
      })
      .nullable(),
    protection: protectionSchema,
    rows: z.array(rowSchema),
  })
  .meta({
    id: 'CrewNoiseReport',
    description: "Noise of one crew's shift by both families, which are never mixed in one figure.",
  });

const substanceSchema = z
  .object({
    name: z.string(),
    why: z.string(),
    measured_mg_per_m3: z
      .number()
      .nullable()
      .describe('Mean over eight hours of what was measured [mg/m3]; null where nothing was.'),
    highest_mg_per_m3: z
      .number()
      .nullable()
      .describe('Highest that was measured [mg/m3]; null where nothing was.'),
    limits: z.array(
      z.object({
        set: z.string(),
        most_mg_per_m3: z
          .number()
          .nullable()
          .describe('Limit [mg/m3]; null where the set does not cover it.'),
        written: z.string(),
        ceiling: z.boolean(),
        source: sourceSchema.nullable(),
        flow_if_all_m3_per_min: z
          .number()
          .nullable()
          .describe(
            'Air flow that keeps it below its limit if all of the fume were it [m3/min]; null where it cannot be reckoned.',
          ),
        verdict: wording,
      }),
    ),
  })
  .meta({ id: 'SubstanceReport', description: 'One substance of the fume.' });

const fumeSchema = z
  .object({
    set: z.string(),
    substances: z.array(substanceSchema),
    mixtures: z.array(
      z.object({
        set: z.string(),
        index: z
          .number()
          .nullable()
          .describe('Index over the measured substances that the set covers [-]; null where none is.'),
        not_covered: z.array(z.string()),
        verdict: wording,
      }),
    ),
  })
  .meta({ id: 'FumeReport', description: 'Fume and gas.' });

const fieldSchema = z
  .object({
    apart_mm: z.number().describe('Distance between the leads of a pair [mm].'),
    distances: z.array(
      z.object({
        field_mT: z.number().describe('Flux density [mT].'),
        what: z.string(),
        single_mm: z.number().describe('From a single lead [mm].'),
        pair_mm: z.number().describe('From the nearer of two leads laid together [mm].'),
        source: sourceSchema,
      }),
    ),
  })
  .meta({ id: 'FieldReport', description: 'Magnetic field beside the leads.' });

const fireZoneSchema = z
  .object({
    radius_m: z.number().describe('All round [m].'),
    ahead_m: z.number().describe('Ahead of the torch along its jet [m].'),
    up_m: z.number().describe('Upwards [m].'),
    down_m: z.number().describe('Downwards [m].'),
    watch_min: z.number().describe('Longest watch of the rules [min].'),
    direction: z.string(),
    both_ways: z.boolean(),
    plan: z.enum(['bay', 'seam']),
    seam_m: z.array(pointSchema).describe('The seam that it lies around [m].'),
    round_m: z.array(pointSchema).describe('Everything within the radius [m].'),
    with_jet_m: z.array(pointSchema).describe('The same with the lobe that the jet throws ahead [m].'),
  })
  .meta({ id: 'FireZoneReport', description: 'The fire zone and its outline in plan view.' });

/** What a job asks of the people around it: figures, values against rules, and standing lists. */
export const hazardSchema = z
  .object({
    setting: settingSchema,
    breaches: z
      .array(
        z.object({
          of: z.string().describe('Hazard or crew that it belongs to, in words.'),
          rule: z.string(),
          value: z.number().nullable().describe('What there is, in the unit beside it.'),
          figure: z.number().nullable().describe('What the rule names, in the unit beside it.'),
          unit: z.enum(STATED_UNITS),
          sense: z.enum(['most', 'least']),
          verdict: wording,
        }),
      )
      .describe('What is over or short of a figure named; it stands first.'),
    noise: z.array(crewNoiseSchema),
    fume: fumeSchema,
    field: fieldSchema,
    fire_zone: fireZoneSchema,
    sections: z.array(sectionSchema),
    limits: z.array(limitSchema),
    cautions: z.array(z.string()).describe('Shown in full wherever the report is.'),
    stop_work: z.array(z.string()).describe('Conditions that stop the run.'),
    defers: z.string(),
  })
  .meta({ id: 'HazardReport', description: 'What a job asks of the people around it. It permits nothing.' });
