import type { GaugeReport } from '../../result/index.ts';
import { stateGauge } from '../../result/index.ts';
import {
  type BudgetLine,
  type CheckedGauge,
  type GaugeOutcome,
  judgeGauge,
  type ReadGauge,
  readGauge,
} from '../../survey/index.ts';

/**
 * What study and checks say of a gauge.
 *
 * @param read - the gauge [record], from `readGauge`
 * @param version - version of the program [text], any
 * @returns the report [record]
 * @source composes `judgeGauge` and `stateGauge`
 * @example
 * answerGauge(readGauge('furrow_gauge: 1\ngauge: bridge gauge').value, '0').reading // => null
 */
export function answerGauge(read: ReadGauge, version: string): GaugeReport {
  return stateGauge(read, judgeGauge(read.gauge), version);
}

/** What a survey takes of a gauge. */
export interface GaugeOfSurvey {
  /** What it is called; left out where nobody names it. */
  readonly name?: string | undefined;
  /** Standard uncertainty of one depth; undefined where no study tells it [m]. */
  readonly u: number | undefined;
  /** What it comes from, in words. */
  readonly from: string;
  /** What it is made of; left out where no study tells it. */
  readonly lines?: readonly BudgetLine[] | undefined;
  /** Its last check; undefined where there is none. */
  readonly check: CheckedGauge | undefined;
}

/**
 * The uncertainty of one depth that is read with a gauge.
 *
 * @param read - the gauge [record], from `readGauge`
 * @returns uncertainty, what it comes from, and its last check [record]
 * @source composes `judgeGauge`
 * @example
 * gaugeOfSurvey(readGauge('furrow_gauge: 1\ngauge: bridge gauge').value).from // => "bridge gauge: no gauge study"
 */
export function gaugeOfSurvey({ gauge }: ReadGauge): GaugeOfSurvey {
  const { budget, from, checks }: GaugeOutcome = judgeGauge(gauge);
  return {
    name: gauge.gauge,
    u: budget?.u,
    from: `${gauge.gauge}: ${from}`,
    lines: budget?.lines,
    check: checks.at(-1),
  };
}

/**
 * The uncertainty of one depth by the text of a gauge file.
 *
 * @param text - the file [text], any; undefined or empty for no gauge
 * @returns what a survey takes of it; undefined where there is none, or where it cannot be read [record]
 * @source composes `readGauge` and `gaugeOfSurvey`
 * @example
 * gaugeFrom('furrow_gauge: 1\ngauge: bridge gauge').name // => "bridge gauge"
 */
export function gaugeFrom(text: string | undefined): GaugeOfSurvey | undefined {
  if (text === undefined || text.trim() === '') return undefined;
  const outcome = readGauge(text);
  return outcome.ok ? gaugeOfSurvey(outcome.value) : undefined;
}
