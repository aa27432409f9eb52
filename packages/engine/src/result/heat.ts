import { z } from 'zod';
import type {
  CoolingRow,
  HardnessOutcome,
  HeatEndsOutcome,
  HeatOutcome,
  HeatPassOutcome,
  HeatSpan,
  PreheatOutcome,
  PreheatRow,
} from '../heat/index.ts';
import { limitSchema, type Stated, sourceSchema } from '../limit/index.ts';
import { type EdgeUnit, inUnit, STATED_UNITS, sentenceSchema } from '../quantity/index.ts';

const heatRangeSchema = z
  .object({
    least: z.number().describe('With the least share of the heat kept [unit of the key].'),
    middle: z.number().describe('With the middle share [unit of the key].'),
    most: z.number().describe('With the greatest share [unit of the key].'),
  })
  .meta({
    id: 'HeatRange',
    description: 'What follows from little, middle and much heat kept by the plate, in the unit of the key.',
  });

const heatAssumptionSchema = z
  .object({ topic: z.string().describe('What it is about.'), text: sentenceSchema, source: sourceSchema })
  .meta({ id: 'HeatAssumption', description: 'A value that the result rests on, with where it comes from.' });

const heatPassSchema = z
  .object({
    number: z.number().describe('Order in which it is run, from 1 [-].'),
    gross_kJ_per_mm: z.number().describe('Gross arc energy per length, U I / v [kJ/mm].'),
    with_melt_kJ_per_mm: z.number().describe('What leaves with the melt [kJ/mm].'),
    kept_kJ_per_mm: heatRangeSchema.describe('What the plate keeps [kJ/mm].'),
    reaching_share: heatRangeSchema.describe(
      'Share of the arc power that must reach the work for what the plate keeps and what leaves with the melt [-].',
    ),
    at_station_s: heatRangeSchema.describe('When the torch is at the station [s].'),
    before_degC: heatRangeSchema.describe('Temperature beside the groove just before it [degC].'),
    wait_s: heatRangeSchema.describe('Wait that the interpass temperature asks for before it [s].'),
  })
  .meta({ id: 'HeatPass', description: 'One pass as the plate feels it at the station.' });

const coolingFormulaSchema = z
  .object({
    name: z.string().describe('Name, in words.'),
    t85_s: heatRangeSchema
      .nullable()
      .describe('Cooling time from 800 to 500 degC; null where the formula does not apply [s].'),
    inside_range: z
      .boolean()
      .describe('Whether heat input, thickness and start temperature are inside what the formula is for.'),
    note: sentenceSchema,
    source: sourceSchema,
  })
  .meta({ id: 'CoolingFormula', description: "One formula's cooling time beside the field's own." });

const hardnessFormulaSchema = z
  .object({
    name: z.string().describe('Name, in words.'),
    value_HV: heatRangeSchema.describe('Hardness for the slowest to the quickest cooling [HV].'),
    source: sourceSchema,
  })
  .meta({ id: 'HardnessFormula', description: "One formula's hardness beside the others." });

const hardnessReportSchema = z
  .object({
    least_HV: z.number().describe("Lower end of the band, formulas' own scatter included [HV]."),
    most_HV: z.number().describe('Upper end of the band [HV].'),
    formulas: z.array(hardnessFormulaSchema),
    skin_HV: z
      .number()
      .describe('Hardness of the carburised film if it is left on, whatever the plate [HV].'),
    note: z.string().describe('What is to be known of it, in words.'),
  })
  .meta({
    id: 'HardnessReport',
    description: 'Hardness as a band over formulas and cooling times, never one number.',
  });

const preheatPartSchema = z
  .object({
    name: z.string().describe('Name, in words.'),
    value: z.number().describe('What the part adds, or its value where `unit` says so [see unit].'),
    unit: z.enum(STATED_UNITS),
  })
  .meta({ id: 'PreheatPart', description: 'One part of a preheat temperature.' });

const preheatMethodSchema = z
  .object({
    method: z.string().describe('Name of the method.'),
    temperature_degC: z
      .number()
      .nullable()
      .describe('Temperature asked for; null where the method cannot be used, as `remarks` say [degC].'),
    parts: z.array(preheatPartSchema),
    inside_range: z.boolean().describe('Whether every input is inside what the method is for.'),
    remarks: z.array(sentenceSchema),
    source: sourceSchema,
  })
  .meta({ id: 'PreheatMethod', description: 'A preheat by one method.' });

const preheatReportSchema = z
  .object({
    methods: z.array(preheatMethodSchema),
    differences: z.array(sentenceSchema).describe('Why the methods differ, in sentences.'),
    gouging: z.object({
      temperature_degC: z.number().describe('Temperature of the plate when gouging begins [degC].'),
      stated: z.boolean().describe('Whether the job states it; if not it is that of the re-weld.'),
      known: z
        .boolean()
        .describe(
          'Whether it is known what the plate asks for: not without the composition of a steel that can harden.',
        ),
      source: sourceSchema,
    }),
  })
  .meta({ id: 'PreheatReport', description: 'The preheats side by side.' });

const skinReportSchema = z
  .object({
    allowance_mm: z.number().describe('Ground away all round the groove [mm].'),
    source: sourceSchema,
    gouged_area_mm2: z.number().describe("Groove's section as gouged [mm2]."),
    ground_area_mm2: z.number().describe('Section after grinding [mm2].'),
    added_percent: z.number().describe('Added to what is filled again [%].'),
    refill_kg: z.number().describe('Weld metal for the whole seam after grinding, cap included [kg].'),
    added_kg: z.number().describe('What of it the grinding adds [kg].'),
  })
  .meta({ id: 'SkinReport', description: 'The carburised skin and what taking it off costs.' });

const heatBalanceSchema = z
  .object({
    given_kJ_per_m: z.number().describe('Given to the plate [kJ/m].'),
    cut_out_kJ_per_m: z.number().describe('Taken away with the metal cut out, as hot as it was [kJ/m].'),
    lost_kJ_per_m: z.number().describe('Lost at the faces [kJ/m].'),
    stored_kJ_per_m: z.number().describe('Still in the section at the end [kJ/m].'),
    error: z.number().describe('What does not add up, as a share of what was given [-].'),
  })
  .meta({
    id: 'HeatBalance',
    description: "Where the energy of one station's section went, per length [kJ/m].",
  });

const heatEndsSchema = z
  .object({
    window_mm: z.number().describe('Stretch of seam that was followed [mm].'),
    whole_seam: z.boolean().describe('Whether that is the whole seam.'),
    back_face_degC: z.number().describe('Highest temperature of the back face in it [degC].'),
    section_back_face_degC: z.number().describe('The same where the seam has no end [degC].'),
    t85_s: z
      .object({
        least: z.number().describe('Shortest [s].'),
        most: z.number().describe('Longest [s].'),
      })
      .nullable()
      .describe('Cooling times from 800 to 500 degC along it; null: nowhere passes both.'),
    section_t85_s: z.number().nullable().describe('The same where the seam has no end [s].'),
    width_past_ac1_mm: z
      .number()
      .nullable()
      .describe('Greatest width at the surface past Ac1, both sides together; null: metal without it [mm].'),
    section_width_past_ac1_mm: z.number().nullable().describe('The same where the seam has no end [mm].'),
    note: sentenceSchema,
  })
  .meta({
    id: 'HeatEnds',
    description: 'The end of the seam beside the section: heat that flows along the seam as well.',
  });

/** What the plan does to the plate, and what it asks for. */
export const heatSchema = z
  .object({
    quality: z
      .enum(['quick', 'refined'])
      .describe('`quick`: a coarse look; `refined`: on a grid whose error was estimated.'),
    grid_error_percent: z
      .number()
      .nullable()
      .describe('Estimated error of the peak temperatures, from two grids; null for a quick look [%].'),
    station_mm: z.number().describe('Place of the section from the start of the seam [mm].'),
    kept_share: heatRangeSchema.describe('Share of the gross arc energy that the plate keeps [-].'),
    assumptions: z.array(heatAssumptionSchema),
    passes: z.array(heatPassSchema),
    transformation: z
      .object({
        ac1_degC: z.number().describe('Start of austenite on heating [degC].'),
        ac3_degC: z.number().describe('End of ferrite on heating [degC].'),
        source: sourceSchema,
      })
      .nullable(),
    width_past_ac1_mm: heatRangeSchema
      .nullable()
      .describe(
        "Width at the plate's surface heated past Ac1, groove left out, both sides together; null: metal without it [mm].",
      ),
    width_past_ac3_mm: heatRangeSchema.nullable().describe('The same past Ac3 [mm].'),
    depth_past_ac1_mm: heatRangeSchema
      .nullable()
      .describe("How far below the groove's floor Ac1 was passed [mm]."),
    back_face_degC: heatRangeSchema.describe('Highest temperature of the back face [degC].'),
    t85_s: heatRangeSchema
      .nullable()
      .describe(
        "Cooling time from 800 to 500 degC at the groove's final surface, of the field; null: it does not pass both [s].",
      ),
    cooling_formulas: z.array(coolingFormulaSchema),
    cooling_remarks: z
      .array(sentenceSchema)
      .describe('Where field and formulas part company and why, in sentences.'),
    hardness: hardnessReportSchema
      .nullable()
      .describe('Null where composition or metal gives no hardness, as `hardness_missing` says.'),
    hardness_missing: z.string().nullable().describe('Why no hardness is told; null where it is.'),
    preheat: preheatReportSchema
      .nullable()
      .describe('Null for metals without such a rule, as `preheat_missing` says.'),
    preheat_missing: z.string().nullable().describe('Why no preheat is told; null where it is.'),
    skin: skinReportSchema,
    balance: heatBalanceSchema,
    ends: heatEndsSchema
      .exactOptional()
      .describe('Only for a refined look at a seam that has ends, and for every look at a short one.'),
    limits: z.array(limitSchema),
    cautions: z.array(sentenceSchema),
  })
  .meta({ id: 'HeatReport', description: 'What the plan does to the plate, and what it asks for.' });

/** What follows from little, middle and much heat kept by the plate. */
export type HeatRange = Stated<typeof heatRangeSchema>;
/** A value that the result rests on, with where it comes from. */
export type HeatAssumption = Stated<typeof heatAssumptionSchema>;
/** One pass as the plate feels it at the station. */
export type HeatPass = Stated<typeof heatPassSchema>;
/** One formula's cooling time beside the field's own. */
export type CoolingFormula = Stated<typeof coolingFormulaSchema>;
/** One formula's hardness beside the others. */
export type HardnessFormula = Stated<typeof hardnessFormulaSchema>;
/** Hardness as a band over formulas and cooling times. */
export type HardnessReport = Stated<typeof hardnessReportSchema>;
/** One part of a preheat temperature. */
export type PreheatPart = Stated<typeof preheatPartSchema>;
/** A preheat by one method. */
export type PreheatMethod = Stated<typeof preheatMethodSchema>;
/** The preheats side by side. */
export type PreheatReport = Stated<typeof preheatReportSchema>;
/** The carburised skin and what taking it off costs. */
export type SkinReport = Stated<typeof skinReportSchema>;
/** Where the energy of one station's section went. */
export type HeatBalance = Stated<typeof heatBalanceSchema>;
/** The end of the seam beside the section. */
export type HeatEnds = Stated<typeof heatEndsSchema>;
/** What the plan does to the plate, and what it asks for. */
export type HeatReport = Stated<typeof heatSchema>;

/** Allowance of ASME PCC-2 [m]. */
const PCC2 = 1.5e-3;

/**
 * States what a plan does to the plate as it leaves: every number in the unit of its key.
 *
 * @param outcome - the heat in SI [record], from `heatOfPlan`
 * @returns the report with units in its keys [record]
 * @source none: unit conversion
 * @example
 * const skin = { allowance: 0.0015, gouged: 1e-4, ground: 1.25e-4, weldMetal: 5, addedMetal: 1 };
 * const nothing = { assumptions: [], passes: [], cooling: { rows: [] }, balance: {}, backFace: {}, gridError: null, transformation: null };
 * stateHeat({ ...nothing, hardness: 'no composition', preheat: 'no composition', skin }).skin.added_percent // => 25
 */
export function stateHeat(outcome: HeatOutcome): HeatReport {
  const { transformation, hardness, preheat, balance, ends } = outcome;
  return {
    quality: outcome.quality,
    grid_error_percent: orNull(outcome.gridError, 'percent'),
    station_mm: inUnit(outcome.station, 'mm'),
    kept_share: outcome.keptShare,
    assumptions: outcome.assumptions,
    passes: outcome.passes.map(statePass),
    transformation: transformation && {
      ac1_degC: inUnit(transformation.ac1, 'degC'),
      ac3_degC: inUnit(transformation.ac3, 'degC'),
      source: transformation.source,
    },
    width_past_ac1_mm: rangeOrNull(outcome.widthPastAc1, 'mm'),
    width_past_ac3_mm: rangeOrNull(outcome.widthPastAc3, 'mm'),
    depth_past_ac1_mm: rangeOrNull(outcome.depthPastAc1, 'mm'),
    back_face_degC: rangeOf(outcome.backFace, 'degC'),
    t85_s: outcome.t85,
    cooling_formulas: outcome.cooling.rows.map(stateCooling),
    cooling_remarks: outcome.cooling.remarks,
    hardness: typeof hardness === 'string' ? null : stateHardness(hardness),
    hardness_missing: typeof hardness === 'string' ? hardness : null,
    preheat: typeof preheat === 'string' ? null : statePreheat(preheat),
    preheat_missing: typeof preheat === 'string' ? preheat : null,
    skin: stateSkin(outcome.skin),
    balance: {
      given_kJ_per_m: inUnit(balance.given, 'kJ'),
      cut_out_kJ_per_m: inUnit(balance.cutOut, 'kJ'),
      lost_kJ_per_m: inUnit(balance.lost, 'kJ'),
      stored_kJ_per_m: inUnit(balance.stored, 'kJ'),
      error: balance.error,
    },
    ...(ends !== undefined && { ends: stateEnds(ends) }),
    limits: outcome.limits,
    cautions: outcome.cautions,
  };
}

function orNull(value: number | null, unit: EdgeUnit): number | null {
  return value === null ? null : inUnit(value, unit);
}

function rangeOf({ least, middle, most }: HeatSpan, unit: EdgeUnit): HeatRange {
  return { least: inUnit(least, unit), middle: inUnit(middle, unit), most: inUnit(most, unit) };
}

function rangeOrNull(span: HeatSpan | null, unit: EdgeUnit): HeatRange | null {
  return span && rangeOf(span, unit);
}

function statePass({ number, heat, atStation, before, wait }: HeatPassOutcome): HeatPass {
  const { gross, withMelt, share, reaching } = heat;
  const kept = { least: gross * share.least, middle: gross * share.middle, most: gross * share.most };
  return {
    number,
    gross_kJ_per_mm: inUnit(gross, 'kJ_per_mm'),
    with_melt_kJ_per_mm: inUnit(withMelt, 'kJ_per_mm'),
    kept_kJ_per_mm: rangeOf(kept, 'kJ_per_mm'),
    reaching_share: reaching,
    at_station_s: atStation,
    before_degC: rangeOf(before, 'degC'),
    wait_s: wait,
  };
}

function stateCooling({ name, t85, insideRange, note, source }: CoolingRow): CoolingFormula {
  return { name, t85_s: t85, inside_range: insideRange, note, source };
}

function stateHardness({ least, most, formulas, skin, note }: HardnessOutcome): HardnessReport {
  return {
    least_HV: least,
    most_HV: most,
    formulas: formulas.map(({ name, value, source }) => ({ name, value_HV: value, source })),
    skin_HV: skin,
    note,
  };
}

function stateMethod(row: PreheatRow): PreheatMethod {
  return {
    method: row.method,
    temperature_degC: orNull(row.temperature, 'degC'),
    parts: row.parts,
    inside_range: row.insideRange,
    remarks: row.remarks,
    source: row.source,
  };
}

function statePreheat({ methods, differences, gouging }: PreheatOutcome): PreheatReport {
  return {
    methods: methods.map(stateMethod),
    differences,
    gouging: {
      temperature_degC: inUnit(gouging.temperature, 'degC'),
      stated: gouging.stated,
      known: gouging.known,
      source: gouging.source,
    },
  };
}

function stateSkin({ allowance, gouged, ground, weldMetal, addedMetal }: HeatOutcome['skin']): SkinReport {
  return {
    allowance_mm: inUnit(allowance, 'mm'),
    source:
      Math.abs(allowance - PCC2) < 1e-9
        ? {
            text: 'ASME PCC-2 Article 304, 304-3.3: another layer by mechanical means after carbon-arc gouging; stated for carbon steel pressure equipment',
            provenance: 'confirmed',
          }
        : { text: 'the job; ASME PCC-2 asks for 1.5 mm', provenance: 'job file' },
    gouged_area_mm2: inUnit(gouged, 'mm2'),
    ground_area_mm2: inUnit(ground, 'mm2'),
    added_percent: gouged > 0 ? inUnit(ground / gouged - 1, 'percent') : 0,
    refill_kg: weldMetal,
    added_kg: addedMetal,
  };
}

function stateEnds(ends: HeatEndsOutcome): HeatEnds {
  return {
    window_mm: inUnit(ends.window, 'mm'),
    whole_seam: ends.wholeSeam,
    back_face_degC: inUnit(ends.backFace, 'degC'),
    section_back_face_degC: inUnit(ends.sectionBackFace, 'degC'),
    t85_s: ends.t85,
    section_t85_s: ends.sectionT85,
    width_past_ac1_mm: orNull(ends.widthPastAc1, 'mm'),
    section_width_past_ac1_mm: orNull(ends.sectionWidthPastAc1, 'mm'),
    note: ends.note,
  };
}
