import type { Outcome } from '../issue/index.ts';
import type { UnitSystem } from '../quantity/index.ts';
import type { CommissionCheck, CommissionUnit } from './check.ts';
import { judgeReading, type ReadingJudgement } from './judge-reading.ts';
import { readReading } from './read-reading.ts';

/** A reading as it is kept with the job: what was typed, what it was read as, what it means. */
export interface CommissionReading {
  /** Identifier of the check. */
  readonly check: string;
  /** What was typed. */
  readonly typed: string;
  /** The reading in `unit`, or whether the check is met [see unit]. */
  readonly value: number | boolean;
  /** Unit of the reading; null for a check that is met or not. */
  readonly unit: CommissionUnit | null;
  readonly judgement: ReadingJudgement;
}

/**
 * Takes down what was typed at a check, with what it means.
 *
 * @param check - the check [record], one of commissionChecks
 * @param typed - what was typed [text], an amount such as 44.2 V, or yes or no
 * @param system - units of the words [text], inch or metric
 * @returns the reading to keep, or why the text cannot be read [record]
 * @source none: bookkeeping
 * @example
 * const check = { id: 'emergency_stop', kind: 'confirm', title: 'Emergency stop', unmet: [], hints: {}, evidence: null };
 * recordReading(check, 'yes', 'metric').value.judgement.verdict // => "met"
 */
export function recordReading(
  check: CommissionCheck,
  typed: string,
  system: UnitSystem,
): Outcome<CommissionReading> {
  const read = readReading(check, typed);
  if (!read.ok) return read;
  const unit = check.kind === 'measure' ? check.unit : null;
  const judgement = judgeReading(check, read.value, system);
  return { ok: true, value: { check: check.id, typed, value: read.value, unit, judgement } };
}
