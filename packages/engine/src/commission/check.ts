import type { FaultBehind } from '../faults/index.ts';
import type { QuantityKind } from '../quantity/index.ts';

/** When a check is made: in this order. */
export type CommissionStage = 'power_off' | 'air_on' | 'dry_run' | 'no_load' | 'trial_arc';

/** Units of commissioning readings. */
export type CommissionUnit = 'V' | 'mV' | 'A' | 'kPa' | 'mm' | 'deg' | 's' | 'degC';

/** One stated uncertainty inside a band. */
export interface BandPart {
  readonly what: string;
  /** Half width it gives alone, in the unit of the check [see unit]. */
  readonly half_width: number;
  readonly source: string;
}

/** What all checks before the first arc have. */
export interface CommissionCheckFacts {
  /** Identifier, the same for the same plan and supply. */
  readonly id: string;
  readonly stage: CommissionStage;
  readonly title: string;
  /** What to do. */
  readonly ask: string;
  /** What can hurt, and how not to be; null where nothing beyond the shop's rules. */
  readonly caution: string | null;
  readonly why: string;
  /** Observable of the table of faults that the check answers; null if none. */
  readonly evidence: string | null;
  /** What else to think of when it is not as it should be, beside the causes of the table. */
  readonly hints: CheckHints;
}

/** What to think of beside the causes of the table of faults, in words. */
export interface CheckHints {
  readonly low?: string;
  readonly high?: string;
  readonly unmet?: string;
}

/** A check with a reading to expect and its band. */
export interface MeasureCheck extends CommissionCheckFacts {
  readonly kind: 'measure';
  readonly quantity: QuantityKind;
  readonly unit: CommissionUnit;
  /** Reading to expect, in `unit` [see unit]. */
  readonly expected: number;
  /** Lower end of the band, in `unit` [see unit]. */
  readonly least: number;
  /** Upper end of the band, in `unit` [see unit]. */
  readonly most: number;
  readonly parts: readonly BandPart[];
  /** Causes that explain a reading below the band, the likeliest first. */
  readonly below: readonly FaultBehind[];
  /** Causes that explain a reading above it. */
  readonly above: readonly FaultBehind[];
}

/** A check that is met or not. */
export interface ConfirmCheck extends CommissionCheckFacts {
  readonly kind: 'confirm';
  /** Causes that explain it not being met. */
  readonly unmet: readonly FaultBehind[];
}

/** One check before the first arc. */
export type CommissionCheck = MeasureCheck | ConfirmCheck;
