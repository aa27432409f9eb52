import type { HeatField } from '../../heat/index.ts';
import type { HeatReport } from '../../result/index.ts';

/** A report with the field through time, for the drawing. */
export interface HeatAnswer {
  readonly report: HeatReport;
  /** Temperatures under the section, for the middle share of heat kept. */
  readonly field: HeatField;
}
