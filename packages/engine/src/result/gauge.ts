import { z } from 'zod';
import { defaultUsedSchema } from '../document/index.ts';
import type { Stated } from '../limit/index.ts';
import { inUnit } from '../quantity/index.ts';
import type { BudgetLine, CheckedGauge, GaugeOutcome, ReadGauge } from '../survey/index.ts';

const studySchema = z
  .object({
    method: z.enum(['anova', 'anova_pooled', 'average_range']),
    repeatability_mm: z.number().describe('Standard deviation of repeated readings by one appraiser.'),
    reproducibility_mm: z
      .number()
      .describe('Standard deviation between appraisers, what they do with single parts included.'),
    reading_mm: z.number().describe('Both together: of one reading by any of them.'),
    parts_mm: z.number().describe('Standard deviation between the parts.'),
    distinct: z
      .number()
      .describe('Classes of parts that the gauge tells apart, not rounded; 5 are asked for (AIAG) [-].'),
    clamped: z.boolean().describe('Whether a variance came out below 0 and was taken as 0.'),
  })
  .meta({ id: 'CrossedStudy', description: 'A crossed gauge study by one method.' });

const nestedSchema = z
  .object({
    level1_mm: z.number().describe('Standard deviation of the readings of one day.'),
    level2_mm: z.number().describe('Standard deviation of the means of days, within a run.'),
    level3_mm: z.number().describe('Standard deviation of the means of runs.'),
    days_mm: z.number().describe('Standard deviation between days, what readings add taken out.'),
    runs_mm: z.number().describe('Standard deviation between runs, what days add taken out.'),
    reading_mm: z.number().describe('Of one reading at any time.'),
    clamped: z.boolean().describe('Whether a variance came out below 0 and was taken as 0.'),
  })
  .meta({ id: 'NestedStudy', description: 'A nested gauge study.' });

/** A check of a gauge against a block, in a report. */
export const gaugeCheckSchema = z
  .object({
    when: z.string().nullable().describe('When it was done.'),
    by: z.string().nullable().describe('Who did it.'),
    off_mm: z.number().describe('Mean of the readings less the block.'),
    u_mm: z.number().describe('Standard uncertainty of that.'),
    verdict: z
      .enum(['holds', 'in_doubt', 'fails'])
      .describe('By a guard band of the expanded uncertainty (ISO 14253-1:2017).'),
  })
  .meta({ id: 'GaugeCheck', description: 'A check of a gauge against a block before it is used.' });

/** What the uncertainty of one depth is made of. */
export const budgetSchema = z.array(
  z.object({
    what: z.enum(['repeatability', 'reproducibility', 'resolution', 'seating', 'calibration', 'deviation']),
    u_mm: z.number().describe('Standard uncertainty that it adds.'),
  }),
);

/** What `furrow gauge` prints with `--json`. */
export const gaugeReportSchema = z
  .object({
    inputs: z.object({
      program_version: z.string().describe('Version of the program.'),
      gauge_revision: z.string().describe('Revision of the gauge file.'),
    }),
    gauge: z.string().describe('Name of the gauge.'),
    crossed: z.array(studySchema).describe('By each method, the one that counts first; empty without one.'),
    nested: nestedSchema.nullable(),
    checks: z.array(gaugeCheckSchema),
    reading: z
      .object({
        u_mm: z.number().describe('Standard uncertainty of one depth read with it.'),
        u95_mm: z.number().describe('Half of its 95 % interval.'),
        budget: budgetSchema,
        from: z.string().describe('What it comes from, with the method.'),
      })
      .nullable()
      .describe('Null without a study.'),
    usable: z.boolean().describe('False where the last check failed.'),
    defaults_used: z.array(defaultUsedSchema),
    remarks: z.array(z.string()).describe('What else is to be known, in words.'),
  })
  .meta({ id: 'GaugeReport', description: 'What study and checks say of a gauge.' });

/** What study and checks say of a gauge, as it leaves the engine. */
export type GaugeReport = Stated<typeof gaugeReportSchema>;

/** Half of a 95 % interval over the standard uncertainty [-]. */
const TWO_SIDED = 1.96;
/** Classes that a gauge is to tell apart (AIAG) [-]. */
const CLASSES_LEAST = 5;

/**
 * States what study and checks say of a gauge, with units in its keys.
 *
 * @param read - the gauge [record], from `readGauge`
 * @param outcome - study, checks and budget [record], from `judgeGauge`
 * @param version - version of the program [text], any
 * @returns the report as it leaves the engine [record]
 * @source none: bookkeeping
 * @example
 * stateGauge({ gauge: { gauge: 'g' }, revision: 'r', defaultsUsed: [] }, { crossed: [], checks: [], from: '' }, '0').usable // => true
 */
export function stateGauge(
  { gauge, revision, defaultsUsed }: ReadGauge,
  { crossed, nested, checks, budget, from }: GaugeOutcome,
  version: string,
): GaugeReport {
  const mm = (metres: number): number => inUnit(metres, 'mm');
  const last = checks.at(-1);
  const enough = crossed.map(({ distinct }) => distinct >= CLASSES_LEAST);
  return {
    inputs: { program_version: version, gauge_revision: revision },
    gauge: gauge.gauge,
    crossed: crossed.map((study) => ({
      method: study.method,
      repeatability_mm: mm(study.repeatability),
      reproducibility_mm: mm(study.reproducibility),
      reading_mm: mm(study.reading),
      parts_mm: mm(study.parts),
      distinct: study.distinct,
      clamped: study.clamped,
    })),
    nested:
      nested === undefined
        ? null
        : {
            level1_mm: mm(nested.level1),
            level2_mm: mm(nested.level2),
            level3_mm: mm(nested.level3),
            days_mm: mm(nested.days),
            runs_mm: mm(nested.runs),
            reading_mm: mm(nested.reading),
            clamped: nested.clamped,
          },
    checks: checks.map(stateGaugeCheck),
    reading:
      budget === undefined
        ? null
        : {
            u_mm: mm(budget.u),
            u95_mm: mm(TWO_SIDED * budget.u),
            budget: stateBudget(budget.lines),
            from,
          },
    usable: last?.verdict !== 'fails',
    defaults_used: defaultsUsed,
    remarks: [
      ...(budget === undefined
        ? ['There is no gauge study: the uncertainty of a reading stays that of the job.']
        : []),
      ...(new Set(enough).size > 1
        ? [
            `The methods disagree whether the gauge tells ${CLASSES_LEAST} classes apart: name the method with the verdict.`,
          ]
        : []),
      ...(last === undefined ? ['It was not checked against a block before use.'] : []),
      ...(last?.verdict === 'fails'
        ? [
            'Its last check failed: set it, check it again, and read again what was read with it since it last held.',
          ]
        : []),
      ...(last?.verdict === 'in_doubt'
        ? ['Its last check is in doubt: read the block more often, or take a finer block.']
        : []),
      ...([...crossed.slice(0, 1), ...(nested === undefined ? [] : [nested])].some(({ clamped }) => clamped)
        ? ['A variance came out below 0 and was taken as 0: more parts or readings would tell it better.']
        : []),
    ],
  };
}

/**
 * States a check of a gauge with units in its keys.
 *
 * @param check - the check [record], in SI
 * @returns the check as it leaves the engine [record]
 * @source none: bookkeeping
 * @example
 * stateGaugeCheck({ when: undefined, by: undefined, off: 0.0001, u: 0.00002, verdict: 'holds' }).off_mm // => 0.1
 */
export function stateGaugeCheck({
  when,
  by,
  off,
  u,
  verdict,
}: CheckedGauge): z.output<typeof gaugeCheckSchema> {
  return { when: when ?? null, by: by ?? null, off_mm: inUnit(off, 'mm'), u_mm: inUnit(u, 'mm'), verdict };
}

/**
 * States what the uncertainty of one depth is made of, with units in its keys.
 *
 * @param lines - the lines [list], in SI
 * @returns the lines as they leave the engine [list]
 * @source none: bookkeeping
 * @example
 * stateBudget([{ what: 'seating', u: 0.0001 }]) // => [{"what":"seating","u_mm":0.1}]
 */
export function stateBudget(lines: readonly BudgetLine[]): z.output<typeof budgetSchema> {
  return lines.map(({ what, u }) => ({ what, u_mm: inUnit(u, 'mm') }));
}
