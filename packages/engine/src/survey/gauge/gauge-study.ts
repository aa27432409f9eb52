import { fisherProbability } from '../../numeric/index.ts';

/** One reading of a crossed gauge study. */
export interface StudyReading {
  /** Part, by name. */
  readonly part: string;
  /** Who read it. */
  readonly appraiser: string;
  /** Reading [unit of the study]. */
  readonly value: number;
}

/** What a crossed gauge study says of a gauge, by one method. */
export interface GaugeStudy {
  readonly method: 'anova' | 'anova_pooled' | 'average_range';
  /** Standard deviation of repeated readings by one appraiser [unit of the study]. */
  readonly repeatability: number;
  /** Standard deviation between appraisers, interaction with parts included [unit of the study]. */
  readonly reproducibility: number;
  /** Both together: standard uncertainty of one reading by any of them [unit of the study]. */
  readonly reading: number;
  /** Standard deviation between parts [unit of the study]. */
  readonly parts: number;
  /** Classes of parts that the gauge tells apart, not rounded [-]. */
  readonly distinct: number;
  /** Variances of the full model [unit squared]; only by analysis of variance. */
  readonly variances?: {
    /** Error [unit of the study squared]. */
    readonly error: number;
    /** Appraiser by part [unit of the study squared]. */
    readonly interaction: number;
    /** Appraiser [unit of the study squared]. */
    readonly appraiser: number;
    /** Part [unit of the study squared]. */
    readonly part: number;
  };
  /** A variance came out below 0 and was taken as 0. */
  readonly clamped: boolean;
}

/** d2* of the range of m values over g samples: AIAG's table, as recalled, for what a study has. */
const D2_STAR: Readonly<Record<string, number>> = {
  '2,1': Math.SQRT2,
  '3,1': 1.91155,
  '4,1': 2.23887,
  '5,1': 2.48124,
  '6,1': 2.67253,
  '7,1': 2.82981,
  '8,1': 2.96288,
  '9,1': 3.07794,
  '10,1': 3.17905,
};
/** d2 of the range of m values, for many samples. */
const D2: Readonly<Record<number, number>> = { 2: 1.12838, 3: 1.69257, 4: 2.05875, 5: 2.32593, 6: 2.53441 };
/** Significance above which the interaction is taken into the error (AIAG) [-]. */
const POOL_ABOVE = 0.25;

interface Table {
  readonly parts: readonly string[];
  readonly appraisers: readonly string[];
  readonly trials: number;
  readonly at: (part: number, appraiser: number) => readonly number[];
}

function tableOf(readings: readonly StudyReading[]): Table | undefined {
  const parts = [...new Set(readings.map(({ part }) => part))];
  const appraisers = [...new Set(readings.map(({ appraiser }) => appraiser))];
  const cells = parts.map((part) =>
    appraisers.map((appraiser) =>
      readings
        .filter((reading) => reading.part === part && reading.appraiser === appraiser)
        .map(({ value }) => value),
    ),
  );
  const trials = cells[0]?.[0]?.length ?? 0;
  const whole = cells.every((row) => row.every((cell) => cell.length === trials));
  if (!whole || trials < 2 || parts.length < 2) return undefined;
  return { parts, appraisers, trials, at: (part, appraiser) => cells[part]![appraiser]! };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/**
 * A crossed gauge study: every appraiser reads every part as often.
 *
 * The two methods can give opposite verdicts, so each result names its own. With the pooled method the interaction of
 * appraiser and part goes into the error where it does not show (p above 0.25).
 *
 * @param readings - the readings [list], each part by each appraiser equally often, at least twice
 * @param method - which method [text], anova, anova_pooled or average_range
 * @returns standard deviations and classes; undefined where the study is not whole [record]
 * @source AIAG, Measurement Systems Analysis (4th edition); constants d2 and d2* as recalled
 * @example
 * const readings = ['a', 'b'].flatMap((part, i) => ['x', 'y'].flatMap((appraiser) => [0, 0.1].map((off) => ({ part, appraiser, value: i + off }))));
 * gaugeStudy(readings, 'anova').repeatability // => 0.0707...
 */
export function gaugeStudy(
  readings: readonly StudyReading[],
  method: GaugeStudy['method'],
): GaugeStudy | undefined {
  const table = tableOf(readings);
  if (table === undefined) return undefined;
  return method === 'average_range' ? byRange(table) : byAnova(table, method);
}

function byAnova({ parts, appraisers, trials, at }: Table, method: 'anova' | 'anova_pooled'): GaugeStudy {
  const [p, a, n] = [parts.length, appraisers.length, trials];
  const cell = parts.map((_, i) => appraisers.map((__, j) => mean(at(i, j))));
  const partMean = cell.map((row) => mean(row));
  const appraiserMean = appraisers.map((_, j) => mean(cell.map((row) => row[j]!)));
  const all = mean(partMean);
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  const ssPart = a * n * sum(partMean.map((value) => (value - all) ** 2));
  const ssAppraiser = p * n * sum(appraiserMean.map((value) => (value - all) ** 2));
  const ssInteraction =
    n *
    sum(
      cell.flatMap((row, i) => row.map((value, j) => (value - partMean[i]! - appraiserMean[j]! + all) ** 2)),
    );
  const ssError = sum(
    parts.flatMap((_, i) =>
      appraisers.flatMap((__, j) => at(i, j).map((value) => (value - cell[i]![j]!) ** 2)),
    ),
  );
  const [dfInteraction, dfError] = [(p - 1) * (a - 1), p * a * (n - 1)];
  const msPart = ssPart / (p - 1);
  const msAppraiser = a > 1 ? ssAppraiser / (a - 1) : 0;
  const msInteraction = dfInteraction > 0 ? ssInteraction / dfInteraction : 0;
  const msError = ssError / dfError;
  const isPooled =
    method === 'anova_pooled' &&
    dfInteraction > 0 &&
    1 - fisherProbability(msInteraction / msError, dfInteraction, dfError) > POOL_ABOVE;
  const pooled = (ssInteraction + ssError) / (dfInteraction + dfError);
  const raw = isPooled
    ? {
        error: pooled,
        interaction: 0,
        appraiser: a > 1 ? (msAppraiser - pooled) / (p * n) : 0,
        part: (msPart - pooled) / (a * n),
      }
    : {
        error: msError,
        interaction: dfInteraction > 0 ? (msInteraction - msError) / n : 0,
        appraiser: a > 1 ? (msAppraiser - msInteraction) / (p * n) : 0,
        part: (msPart - (dfInteraction > 0 ? msInteraction : msError)) / (a * n),
      };
  const kept = (variance: number): number => Math.max(0, variance);
  const variances = {
    error: raw.error,
    interaction: kept(raw.interaction),
    appraiser: kept(raw.appraiser),
    part: kept(raw.part),
  };
  return {
    ...studyOf(
      method,
      Math.sqrt(variances.error),
      Math.sqrt(variances.interaction + variances.appraiser),
      Math.sqrt(variances.part),
    ),
    variances,
    clamped: Object.values(raw).some((variance) => variance < 0),
  };
}

function byRange({ parts, appraisers, trials, at }: Table): GaugeStudy | undefined {
  const d2 = D2[trials];
  const ofAppraisers = appraisers.length > 1 ? D2_STAR[`${appraisers.length},1`] : 1;
  const ofParts = D2_STAR[`${parts.length},1`];
  if (d2 === undefined || ofAppraisers === undefined || ofParts === undefined) return undefined;
  const rangeOf = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  const ranges = parts.flatMap((_, i) => appraisers.map((__, j) => rangeOf(at(i, j))));
  const repeatability = mean(ranges) / d2;
  const appraiserMeans = appraisers.map((_, j) => mean(parts.map((__, i) => mean(at(i, j)))));
  const partMeans = parts.map((_, i) => mean(appraisers.map((__, j) => mean(at(i, j)))));
  const between =
    appraisers.length > 1
      ? (rangeOf(appraiserMeans) / ofAppraisers) ** 2 - repeatability ** 2 / (parts.length * trials)
      : 0;
  return {
    ...studyOf('average_range', repeatability, Math.sqrt(Math.max(0, between)), rangeOf(partMeans) / ofParts),
    clamped: between < 0,
  };
}

/** Classes told apart per ratio of the standard deviations: the square root of 2, as the manual rounds it [-]. */
const CLASSES = 1.41;

function studyOf(
  method: GaugeStudy['method'],
  repeatability: number,
  reproducibility: number,
  parts: number,
) {
  const reading = Math.hypot(repeatability, reproducibility);
  return { method, repeatability, reproducibility, reading, parts, distinct: (CLASSES * parts) / reading };
}

/** A gauge study in which readings are nested in days, and days in runs. */
export interface NestedStudy {
  /** Standard deviation of readings of one day [unit of the study]. */
  readonly level1: number;
  /** Standard deviation of the means of days, within a run [unit of the study]. */
  readonly level2: number;
  /** Standard deviation of the means of runs [unit of the study]. */
  readonly level3: number;
  /** Standard deviation between days, what readings add taken out; 0 where that is below 0 [unit of the study]. */
  readonly days: number;
  /** Standard deviation between runs, what days add taken out; 0 where that is below 0 [unit of the study]. */
  readonly runs: number;
  /** Standard uncertainty of one reading at any time [unit of the study]. */
  readonly reading: number;
  /** A variance came out below 0 and was taken as 0. */
  readonly clamped: boolean;
}

/** Readings of one check standard on one day. */
export interface StudyDay {
  /** Mean of the readings [unit of the study]. */
  readonly mean: number;
  /** Their standard deviation [unit of the study]. */
  readonly sd: number;
}

/**
 * A nested gauge study: repeated readings of check standards on each of some days, in each of some runs.
 *
 * @param standards - days by run, by standard [list], as many days per run and runs per standard, at least two of each
 * @param readings - readings per day [-], at least 2
 * @returns standard deviations by level [record]
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 2.4.4 and 2.6.1
 * @example
 * nestedStudy([[[{ mean: 1, sd: 0.1 }, { mean: 1.2, sd: 0.1 }], [{ mean: 1.1, sd: 0.1 }, { mean: 1.3, sd: 0.1 }]]], 6).level1 // => 0.1
 */
export function nestedStudy(
  standards: readonly (readonly (readonly StudyDay[])[])[],
  readings: number,
): NestedStudy {
  const varianceOf = (values: readonly number[]): number => {
    const middle = mean(values);
    return values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / Math.max(1, values.length - 1);
  };
  const runs = standards.flat();
  const first = mean(runs.flat().map(({ sd }) => sd ** 2));
  const second = mean(runs.map((run) => varianceOf(run.map((day) => day.mean))));
  const third = mean(
    standards.map((standard) => varianceOf(standard.map((run) => mean(run.map((day) => day.mean))))),
  );
  const rawDays = second - first / readings;
  const rawRuns = third - second / (runs[0]?.length ?? 1);
  return {
    level1: Math.sqrt(first),
    level2: Math.sqrt(second),
    level3: Math.sqrt(third),
    days: Math.sqrt(Math.max(0, rawDays)),
    runs: Math.sqrt(Math.max(0, rawRuns)),
    reading: Math.sqrt(first + Math.max(0, rawDays) + Math.max(0, rawRuns)),
    clamped: rawDays < 0 || rawRuns < 0,
  };
}

/** A check of a gauge against a block before it is used. */
export interface GaugeCheck {
  /** Mean of the readings less the block [m]. */
  readonly off: number;
  /** Standard uncertainty of that [m]. */
  readonly u: number;
  /** Whether the gauge may be used: off by no more than what is allowed, surely. */
  readonly verdict: 'holds' | 'in_doubt' | 'fails';
}

/**
 * Judges a gauge by readings of a block whose size is known.
 *
 * @param readings - readings of the block [list], in m, at least two
 * @param block - size of the block [m], > 0
 * @param blockU - standard uncertainty of the block [m], >= 0
 * @param allowed - greatest deviation that is allowed [m], > 0
 * @returns deviation, its uncertainty and the verdict [record]
 * @source ISO 14253-1:2017 (memory): guard band of the expanded uncertainty on either side of the limit
 * @example
 * gaugeCheck([0.01002, 0.01, 0.01001], 0.01, 0.000001, 0.0001).verdict // => "holds"
 */
export function gaugeCheck(
  readings: readonly number[],
  block: number,
  blockU: number,
  allowed: number,
): GaugeCheck {
  const off = mean(readings) - block;
  const variance =
    readings.reduce((sum, value) => sum + (value - block - off) ** 2, 0) / Math.max(1, readings.length - 1);
  const u = Math.hypot(Math.sqrt(variance / readings.length), blockU);
  const wide = 2 * u;
  const size = Math.abs(off);
  return { off, u, verdict: size + wide <= allowed ? 'holds' : size - wide > allowed ? 'fails' : 'in_doubt' };
}
