import type { CheckHints, CommissionUnit } from '../commission/index.ts';
import type { Source } from '../limit/index.ts';

/** One connection to make. */
export interface ConnectionReport {
  /** Identifier, the same for the same connection in every plan, such as `lead_2`. */
  readonly id: string;
  readonly kind: 'electrode lead' | 'work lead' | 'air' | 'sense wire' | 'mains' | 'control';
  /** What runs there. */
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** Size, such as `2 x 95 mm2`; empty where it has none. */
  readonly size: string;
  /** Length [m]; null where it is not stated. */
  readonly length_m: number | null;
  /** Terminal that it goes to: `positive` or `negative`; null where polarity has no part. */
  readonly polarity: 'positive' | 'negative' | null;
  /** How tightness is checked, in words. */
  readonly check: string;
}

/** One check before the first arc. */
export interface CheckReport {
  /** Identifier, the same for the same check in every plan, such as `arc_voltage`. */
  readonly id: string;
  /** When it is made. */
  readonly stage: 'before power' | 'no load' | 'air' | 'motion' | 'with arc';
  readonly title: string;
  /** What to do and where to put the meter, in words. */
  readonly how: string;
  /** What can hurt, and how not to be; null where nothing beyond the shop's rules. */
  readonly caution: string | null;
  /** What the check is for, in words. */
  readonly why: string;
  /** The reading to expect; null for a check that is only ticked. */
  readonly expect: ExpectedReading | null;
  /** Readings or symptoms of the fault model that the reading answers, for `faultsBehind`; null where there is none. */
  readonly observable: string | null;
  /** What else to think of when it is not as it should be, beside the faults. */
  readonly hints: CheckHints;
  readonly source: Source;
}

/** A reading to expect with its band. */
export interface ExpectedReading {
  /** Unit as shown on the meter. */
  readonly unit: CommissionUnit;
  /** What to expect [see unit]. */
  readonly value: number;
  /** Least that is in band [see unit]; null for no lower end. */
  readonly least: number | null;
  /** Greatest that is in band [see unit]; null for no upper end. */
  readonly most: number | null;
}
