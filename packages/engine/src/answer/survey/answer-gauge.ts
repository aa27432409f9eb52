import type { GaugeReport } from '../../result/index.ts';
import { stateGauge } from '../../result/index.ts';
import { type CheckedGauge, type GaugeOutcome, judgeGauge, type ReadGauge } from '../../survey/index.ts';

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
  /** Standard uncertainty of one depth; undefined where no study tells it [m]. */
  readonly u: number | undefined;
  /** What it comes from, in words. */
  readonly from: string;
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
  return { u: budget?.u, from: `${gauge.gauge}: ${from}`, check: checks.at(-1) };
}
