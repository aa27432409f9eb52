import type { Gauge } from './gauge-schema.ts';
import {
  type GaugeCheck,
  type GaugeStudy,
  gaugeCheck,
  gaugeStudy,
  type NestedStudy,
  nestedStudy,
} from './gauge-study.ts';
import { type ReadingBudget, readingBudget } from './reading-budget.ts';

/** A check of a gauge, with when and by whom. */
export interface CheckedGauge extends GaugeCheck {
  readonly when: string | undefined;
  readonly by: string | undefined;
}

/** What study and checks say of a gauge; SI. */
export interface GaugeOutcome {
  /** By each method that the study allows, the one taken first; none without a crossed study. */
  readonly crossed: readonly GaugeStudy[];
  readonly nested: NestedStudy | undefined;
  readonly checks: readonly CheckedGauge[];
  /** Of one depth; undefined without a study. */
  readonly budget: ReadingBudget | undefined;
  /** The study in words, with its method. */
  readonly from: string;
}

const METHOD_NAMES: Readonly<Record<GaugeStudy['method'], string>> = {
  anova: 'analysis of variance',
  anova_pooled: 'analysis of variance, interaction pooled where it does not show',
  average_range: 'average and range',
};

/**
 * Works out the study of a gauge and its checks, and the uncertainty of one depth that is read with it.
 *
 * The last check counts: its deviation is not corrected, so it is part of the uncertainty.
 *
 * @param gauge - the gauge [record], from `readGauge`
 * @returns study, checks and budget [record]
 * @source AIAG, Measurement Systems Analysis (4th edition); NIST/SEMATECH e-Handbook 2.6.1; JCGM 100:2008
 * @example
 * const row = (part, appraiser, off) => ({ part, appraiser, readings: [{ reading: 0.01 * part + off }, { reading: 0.01 * part + off + 1e-4 }] });
 * judgeGauge({ gauge: 'g', method: 'anova', averaged: 1, crossed: [row(1, 'A', 0), row(2, 'A', 0), row(1, 'B', 0), row(2, 'B', 0)] }).budget.lines[0] // => {"what":"repeatability","u":0.0000707...}
 */
export function judgeGauge(
  gauge: Pick<
    Gauge,
    'method' | 'crossed' | 'nested' | 'averaged' | 'resolution' | 'seating' | 'calibration' | 'checks'
  >,
): GaugeOutcome {
  const { method, averaged, resolution, seating, calibration } = gauge;
  const others = (['anova_pooled', 'anova', 'average_range'] as const).filter((each) => each !== method);
  const readings = (gauge.crossed ?? []).flatMap(({ part, appraiser, readings: values }) =>
    values.map(({ reading: value }) => ({ part, appraiser, value })),
  );
  const crossed = [method, ...others].flatMap((each) => gaugeStudy(readings, each) ?? []);
  const nested = gauge.nested === undefined ? undefined : nestedOf(gauge.nested);
  const checks = (gauge.checks ?? []).map(checkOf);
  const [taken] = crossed;
  const spread =
    taken !== undefined
      ? taken
      : nested !== undefined
        ? { repeatability: nested.level1, reproducibility: Math.hypot(nested.days, nested.runs) }
        : undefined;
  return {
    crossed,
    nested,
    checks,
    budget:
      spread &&
      readingBudget({
        repeatability: spread.repeatability,
        reproducibility: spread.reproducibility,
        averaged,
        resolution,
        seating,
        calibration,
        deviation: checks.at(-1),
      }),
    from:
      taken !== undefined
        ? `a crossed gauge study by ${METHOD_NAMES[taken.method]}`
        : nested !== undefined
          ? 'a nested gauge study'
          : 'no gauge study',
  };
}

/**
 * Judges one check of a gauge as it stands in a file.
 *
 * @param check - block, what is allowed and the readings [record], at least two readings
 * @returns the judgement, with when and by whom [record]
 * @source as `gaugeCheck`
 * @example
 * checkOf({ block: 0.01, allowed: 0.0001, readings: [{ reading: 0.01 }, { reading: 0.01002 }] }).verdict // => "holds"
 */
export function checkOf(check: {
  readonly when?: string | undefined;
  readonly by?: string | undefined;
  readonly block: number;
  readonly block_spread?: number | undefined;
  readonly allowed: number;
  readonly readings: readonly { readonly reading: number }[];
}): CheckedGauge {
  const { when, by, block, block_spread: blockU = 0, allowed, readings } = check;
  const read = readings.map(({ reading }) => reading);
  return { when, by, ...gaugeCheck(read, block, blockU, allowed) };
}

function nestedOf(rows: NonNullable<Gauge['nested']>): NestedStudy {
  const standards = [...new Set(rows.map(({ standard }) => standard))].map((standard) => {
    const own = rows.filter((row) => row.standard === standard);
    return [...new Set(own.map(({ run }) => run))].map((run) =>
      own
        .filter((row) => row.run === run)
        .map(({ readings }) => dayOf(readings.map(({ reading }) => reading))),
    );
  });
  return nestedStudy(standards, rows[0]!.readings.length);
}

function dayOf(values: readonly number[]): { readonly mean: number; readonly sd: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(squares / (values.length - 1)) };
}
