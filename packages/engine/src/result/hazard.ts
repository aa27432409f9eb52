import { z } from 'zod';
import {
  type BreachOutcome,
  type CrewOutcome,
  type FigureOutcome,
  type FireZoneOutcome,
  type FumeOutcome,
  HAZARD_WORDINGS,
  type HazardOutcome,
  type HazardRowOutcome,
  type HazardSectionOutcome,
  type RangeOutcome,
  STANDING_CAUTIONS,
  STOP_WORK,
  type SubstanceOutcome,
  type TaskOutcome,
} from '../hazard/index.ts';
import { type Limit, limitSchema, type Stated, sourceSchema } from '../limit/index.ts';
import { type EdgeUnit, inUnit, STATED_UNITS, type StatedUnit, sentenceSchema } from '../quantity/index.ts';
import { pointReportSchema, statePoint } from './place.ts';

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

const settingSchema = z
  .object({
    current_A: z
      .number()
      .describe("Greatest current of the plan, or of the job's source where there is no plan [A]."),
    of: z.enum(['plan', 'source']).describe('Where the current comes from.'),
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
    name: z.string().describe('Name, in words.'),
    value: z.number().nullable().describe('The figure, in `unit`; null where it is not known.'),
    unit: z.enum(STATED_UNITS),
    note: z.string().describe('What is to be known of it, in words.'),
    source: sourceSchema,
  })
  .meta({ id: 'HazardFigure', description: 'A figure to know, held against nothing.' });

const rowSchema = z
  .object({
    id: z.string().describe('Identifier.'),
    rule: z.string().describe('What the rule is about, in words.'),
    value: z.number().nullable().describe('What there is, in `unit`; null where it is not known.'),
    figure: z
      .number()
      .nullable()
      .describe('What the rule names, in `unit`; null where the source names none for this case.'),
    unit: z.enum(STATED_UNITS),
    sense: z.enum(['most', 'least']).describe('Whether the rule asks for at most or at least its figure.'),
    verdict: wording,
    note: z.string().describe('What is to be known of it, in words.'),
    source: sourceSchema,
  })
  .meta({
    id: 'HazardRow',
    description: 'A value held against the figure that a rule names, in one of four wordings.',
  });

const ruleSchema = z
  .object({ text: sentenceSchema, source: sourceSchema })
  .meta({ id: 'HazardRule', description: 'What a rule asks in words.' });

const sectionSchema = z
  .object({
    id: z.enum(['noise', 'eyes', 'fire', 'fume', 'shock', 'field', 'air', 'space', 'heat']),
    title: z.string().describe('Name, in words.'),
    figures: z.array(figureSchema),
    rows: z.array(rowSchema),
    rules: z.array(ruleSchema),
  })
  .meta({
    id: 'HazardSection',
    description: 'One hazard: figures, values against rules, and rules in words.',
  });

const noiseTaskSchema = z
  .object({
    name: z.string().describe('Name, in words.'),
    time_min: z.number().describe('How long it lasts in the shift [min].'),
    level_dBA: rangeSchema.nullable().describe('Level at the ear [dBA]; null where nothing is known of it.'),
    measured: z.boolean().describe('Whether the level was measured.'),
    osha_time_min: z
      .number()
      .nullable()
      .describe('Time that the 5 dB rule sets against the upper level [min]; null where it is not known.'),
    niosh_time_min: z
      .number()
      .nullable()
      .describe('Time that the 3 dB rule sets against the upper level [min]; null where it is not known.'),
    source: sourceSchema.describe('Where the level comes from.'),
  })
  .meta({ id: 'NoiseTaskReport', description: 'One task of a crew as its noise counts.' });

const protectionSchema = z.object({
  worn: z.string().describe('What is worn.'),
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
  says: z.string().describe('In words.'),
  source: sourceSchema,
});

const crewNoiseSchema = z
  .object({
    name: z.string().describe('Name, in words.'),
    stated: z
      .boolean()
      .describe('Whether the job states the crew, or it stands in for one with the arc time of the plan.'),
    people: z.number().nullable().describe('People in it [-]; null where it is not stated.'),
    shift_min: z.number().describe('Length of the shift [min].'),
    quiet_min: z.number().describe('What no task fills, counted as quiet [min].'),
    tasks: z.array(noiseTaskSchema),
    missing: z.string().nullable().describe('Why there are no doses; null where there are.'),
    five_dB: z
      .object({
        pel_dose_percent: rangeSchema.describe('Dose of levels from 90 dBA on [%].'),
        pel_average_dBA: rangeSchema
          .nullable()
          .describe('Average of that dose; null where nothing counts [dBA].'),
        action_dose_percent: rangeSchema.describe('Dose of levels from 80 dBA on [%].'),
        action_average_dBA: rangeSchema
          .nullable()
          .describe('Average of that dose; null where nothing counts [dBA].'),
      })
      .nullable(),
    three_dB: z
      .object({
        dose_percent: rangeSchema.describe('NIOSH dose [%].'),
        average_dBA: rangeSchema.describe('NIOSH average [dBA].'),
        exposure_level_dBA: rangeSchema.describe('L_EX,8h [dBA].'),
      })
      .nullable(),
    protection: protectionSchema,
    rows: z.array(rowSchema),
  })
  .meta({
    id: 'CrewNoiseReport',
    description: "Noise of one crew's shift by both families, which are never mixed in one figure.",
  });

const substanceLimitSchema = z
  .object({
    set: z.string().describe('Which list sets it.'),
    most_mg_per_m3: z.number().nullable().describe('Limit [mg/m3]; null where the set does not cover it.'),
    written: z.string().describe('As the list writes it.'),
    ceiling: z.boolean().describe('Whether it may not be passed for a moment.'),
    source: sourceSchema.nullable(),
    flow_if_all_m3_per_min: z
      .number()
      .nullable()
      .describe(
        'Air flow that keeps it below its limit if all of the fume were it [m3/min]; null where it cannot be worked out.',
      ),
    verdict: wording,
  })
  .meta({ id: 'SubstanceLimit', description: 'Limit of a substance in one set.' });

const substanceSchema = z
  .object({
    name: z.string().describe('Name, in words.'),
    why: z.string().describe('Why, in words.'),
    measured_mg_per_m3: z
      .number()
      .nullable()
      .describe('Mean over eight hours of what was measured [mg/m3]; null where nothing was.'),
    highest_mg_per_m3: z
      .number()
      .nullable()
      .describe('Highest that was measured [mg/m3]; null where nothing was.'),
    limits: z.array(substanceLimitSchema),
  })
  .meta({ id: 'SubstanceReport', description: 'One substance of the fume.' });

const mixtureSchema = z
  .object({
    set: z.string().describe('The set by which air flows are worked out.'),
    index: z
      .number()
      .nullable()
      .describe('Index over the measured substances that the set covers [-]; null where none is.'),
    not_covered: z.array(z.string()).describe('Substances that the rule says nothing of.'),
    verdict: wording,
  })
  .meta({ id: 'MixtureReport', description: 'Additive index by one set of limits.' });

const fumeSchema = z
  .object({
    set: z.string().describe('The set by which air flows are worked out.'),
    substances: z.array(substanceSchema),
    mixtures: z.array(mixtureSchema),
  })
  .meta({ id: 'FumeReport', description: 'Fume and gas.' });

const fieldSchema = z
  .object({
    apart_mm: z.number().describe('Distance between the leads of a pair [mm].'),
    distances: z.array(
      z.object({
        field_mT: z.number().describe('Flux density [mT].'),
        what: z.string().describe('What it is, in words.'),
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
    direction: z.string().describe('Where the jet throws, in words.'),
    both_ways: z.boolean().describe('Whether the jet may throw either way along the seam.'),
    plan: z
      .enum(['bay', 'seam'])
      .describe(
        "`bay`: the outlines lie in the kit's bay; `seam`: around a straight seam of the job's length from the origin to the right.",
      ),
    seam_m: z.array(pointReportSchema).describe('The seam that it lies around [m].'),
    round_m: z.array(pointReportSchema).describe('Everything within the radius [m].'),
    with_jet_m: z.array(pointReportSchema).describe('The same with the lobe that the jet throws ahead [m].'),
  })
  .meta({ id: 'FireZoneReport', description: 'The fire zone and its outline in plan view.' });

const breachSchema = z
  .object({
    of: z.string().describe('Hazard or crew that it belongs to, in words.'),
    rule: z.string().describe('The rule, in words.'),
    value: z.number().nullable().describe('What there is, in the unit beside it.'),
    figure: z.number().nullable().describe('What the rule names, in the unit beside it.'),
    unit: z.enum(STATED_UNITS),
    sense: z.enum(['most', 'least']),
    verdict: wording,
  })
  .meta({ id: 'HazardBreach', description: 'What is over or short of a figure named.' });

/** What a job asks of the people around it: figures, values against rules, and standing lists. */
export const hazardSchema = z
  .object({
    setting: settingSchema,
    breaches: z.array(breachSchema).describe('What is over or short of a figure named; it stands first.'),
    noise: z.array(crewNoiseSchema),
    fume: fumeSchema,
    field: fieldSchema,
    fire_zone: fireZoneSchema,
    sections: z.array(sectionSchema),
    limits: z.array(limitSchema).describe('Margins of the hazards at the setting.'),
    cautions: z.array(z.string()).describe('Shown in full wherever the report is.'),
    stop_work: z.array(z.string()).describe('Conditions that stop the run.'),
    defers: z.string().describe('To whom these figures defer.'),
  })
  .meta({ id: 'HazardReport', description: 'What a job asks of the people around it. It permits nothing.' });

/** Lower and upper end of what is not known better. */
export type HazardRange = Stated<typeof rangeSchema>;
/** The setting that the hazards are told for. */
export type HazardSetting = Stated<typeof settingSchema>;
/** A figure to know, held against nothing. */
export type HazardFigure = Stated<typeof figureSchema>;
/** A value held against the figure that a rule names. */
export type HazardRow = Stated<typeof rowSchema>;
/** What is over or short of a figure named. */
export type HazardBreach = Stated<typeof breachSchema>;
/** What a rule asks in words, where there is nothing to work out. */
export type HazardRule = Stated<typeof ruleSchema>;
/** One hazard: figures, values against rules, and what rules ask in words. */
export type HazardSection = Stated<typeof sectionSchema>;
/** One task of a crew as its noise counts. */
export type NoiseTaskReport = Stated<typeof noiseTaskSchema>;
/** Noise of one crew's shift by both families. */
export type CrewNoiseReport = Stated<typeof crewNoiseSchema>;
/** Limit of a substance in one set. */
export type SubstanceLimit = Stated<typeof substanceLimitSchema>;
/** One substance of the fume. */
export type SubstanceReport = Stated<typeof substanceSchema>;
/** Additive index by one set of limits. */
export type MixtureReport = Stated<typeof mixtureSchema>;
/** Fume and gas. */
export type FumeReport = Stated<typeof fumeSchema>;
/** Magnetic field beside the leads. */
export type FieldReport = Stated<typeof fieldSchema>;
/** The fire zone and its outline in plan view. */
export type FireZoneReport = Stated<typeof fireZoneSchema>;
/** What a job asks of the people around it. It permits nothing. */
export type HazardReport = Stated<typeof hazardSchema>;

const DEFERS =
  'Planning figures, shown beside the figure that a source names. Nothing here permits work: local codes, the site’s own rules and licensed practice govern, and they come first.';

/**
 * States the hazards of a job as they leave: every number in the unit of its key or beside it.
 *
 * @param outcome - the hazards in SI [record], from `judgeHazards`
 * @param limits - margins of the hazards at the setting [list], from the plan
 * @returns the report with units in its keys [record]
 * @source none: unit conversion
 * @example
 * stateHazard(judgeHazards({ job: demoJob.job }), []).setting.push_angle_deg // => 45
 */
export function stateHazard(outcome: HazardOutcome, limits: readonly Limit[]): HazardReport {
  const { setting, field } = outcome;
  return {
    setting: {
      current_A: setting.current,
      of: setting.of,
      push_angle_deg: inUnit(setting.pushAngle, 'deg'),
      arc_time_min: orNull(setting.arcTime, 'min'),
      torches: setting.torches,
      place: setting.place,
    },
    breaches: outcome.breaches.map(stateHeld<BreachOutcome>),
    noise: outcome.noise.map(stateCrew),
    fume: stateFume(outcome.fume),
    field: {
      apart_mm: inUnit(field.apart, 'mm'),
      distances: field.distances.map((each) => ({
        field_mT: inUnit(each.field, 'mT'),
        what: each.what,
        single_mm: inUnit(each.single, 'mm'),
        pair_mm: inUnit(each.pair, 'mm'),
        source: each.source,
      })),
    },
    fire_zone: stateZone(outcome.fireZone),
    sections: outcome.sections.map(stateSection),
    limits,
    cautions: STANDING_CAUTIONS,
    stop_work: STOP_WORK,
    defers: DEFERS,
  };
}

function orNull(value: number | null, unit: EdgeUnit | StatedUnit): number | null {
  return value === null ? null : inUnit(value, unit);
}

/** A value and the figure it is held against, in the unit that stands beside both. */
function stateHeld<Held extends Pick<HazardRowOutcome, 'value' | 'figure' | 'unit'>>(held: Held): Held {
  const { value, figure, unit } = held;
  return { ...held, value: orNull(value, unit), figure: orNull(figure, unit) };
}

function stateFigure(figure: FigureOutcome): HazardFigure {
  return { ...figure, value: orNull(figure.value, figure.unit) };
}

function stateSection(section: HazardSectionOutcome): HazardSection {
  return {
    ...section,
    figures: section.figures.map(stateFigure),
    rows: section.rows.map(stateHeld<HazardRowOutcome>),
  };
}

function stateRange({ least, most }: RangeOutcome, unit: EdgeUnit): HazardRange {
  return { least: inUnit(least, unit), most: inUnit(most, unit) };
}

function stateTask({ level, ...task }: TaskOutcome): NoiseTaskReport {
  return {
    name: task.name,
    time_min: inUnit(task.time, 'min'),
    measured: task.measured,
    level_dBA: level,
    osha_time_min: orNull(task.oshaTime, 'min'),
    niosh_time_min: orNull(task.nioshTime, 'min'),
    source: task.source,
  };
}

function stateCrew(crew: CrewOutcome): CrewNoiseReport {
  const { fiveDecibel: five, threeDecibel: three, protection } = crew;
  return {
    name: crew.name,
    stated: crew.stated,
    people: crew.people,
    shift_min: inUnit(crew.shift, 'min'),
    quiet_min: inUnit(crew.quiet, 'min'),
    tasks: crew.tasks.map(stateTask),
    missing: crew.missing,
    five_dB: five && {
      pel_dose_percent: stateRange(five.pelDose, 'percent'),
      pel_average_dBA: five.pelAverage,
      action_dose_percent: stateRange(five.actionDose, 'percent'),
      action_average_dBA: five.actionAverage,
    },
    three_dB: three && {
      dose_percent: stateRange(three.dose, 'percent'),
      average_dBA: three.average,
      exposure_level_dBA: three.exposureLevel,
    },
    protection: {
      worn: protection.worn,
      attenuation_dB: protection.attenuation,
      five_dB_average_dBA: protection.fiveDecibelAverage,
      exposure_level_dBA: protection.exposureLevel,
      gouging_time_min: orNull(protection.gougingTime, 'min'),
      says: protection.says,
      source: protection.source,
    },
    rows: crew.rows.map(stateHeld<HazardRowOutcome>),
  };
}

function stateSubstance(substance: SubstanceOutcome): SubstanceReport {
  return {
    name: substance.name,
    why: substance.why,
    measured_mg_per_m3: substance.measured,
    highest_mg_per_m3: substance.highest,
    limits: substance.limits.map((limit) => ({
      set: limit.set,
      most_mg_per_m3: limit.most,
      written: limit.written,
      ceiling: limit.ceiling,
      source: limit.source,
      flow_if_all_m3_per_min: orNull(limit.flowIfAll, 'm3_per_min'),
      verdict: limit.verdict,
    })),
  };
}

function stateFume({ set, substances, mixtures }: FumeOutcome): FumeReport {
  return {
    set,
    substances: substances.map(stateSubstance),
    mixtures: mixtures.map(({ notCovered, ...mixture }) => ({
      set: mixture.set,
      index: mixture.index,
      not_covered: notCovered,
      verdict: mixture.verdict,
    })),
  };
}

function stateZone(zone: FireZoneOutcome): FireZoneReport {
  return {
    radius_m: zone.radius,
    ahead_m: zone.ahead,
    up_m: zone.up,
    down_m: zone.down,
    watch_min: inUnit(zone.watch, 'min'),
    direction: zone.direction,
    both_ways: zone.bothWays,
    plan: zone.plan,
    seam_m: zone.seam.map(statePoint),
    round_m: zone.round.map(statePoint),
    with_jet_m: zone.withJet.map(statePoint),
  };
}
