import type { FaultBehind, FaultEvidence, FaultOutcome } from '../faults/index.ts';
import { type Amount, type Sentence, say } from '../quantity/index.ts';
import type { CommissionCheck, MeasureCheck } from './check.ts';
import { bandEnd, readingAmount } from './reading-amount.ts';

/** What a reading means. */
export interface ReadingJudgement {
  /** Identifier of the check. */
  readonly check: string;
  readonly verdict: 'in_band' | 'low' | 'high' | 'met' | 'not_met';
  /** How the reading stands to its band, in a sentence. */
  readonly says: Sentence;
  /** Causes that explain it, the likeliest first; none where it is as it should be. */
  readonly faults: readonly FaultBehind[];
  /** The answer it gives to the table of faults; null where the table does not ask. */
  readonly evidence: { readonly observable: string; readonly outcome: FaultOutcome } | null;
}

function judgeMeasure(check: MeasureCheck, value: number): ReadingJudgement {
  const { id, least, most, below, above } = check;
  const verdict = value < least ? 'low' : value > most ? 'high' : 'in_band';
  const outcome: FaultOutcome = verdict === 'in_band' ? 'in' : verdict;
  const evidence = check.evidence === null ? null : { observable: check.evidence, outcome };
  // beyond an end by however little, the two are written so that they differ
  const amount = (one: number, other: number): Amount => ({
    ...readingAmount(check, one),
    ...(verdict !== 'in_band' && { beside: readingAmount(check, other).value }),
  });
  const end = verdict === 'low' ? least : most;
  const low =
    verdict === 'low' ? { ...amount(least, value), ...bandEnd(check, 'least') } : bandEnd(check, 'least');
  const high =
    verdict === 'high' ? { ...amount(most, value), ...bandEnd(check, 'most') } : bandEnd(check, 'most');
  const place = { in_band: 'in', low: 'below', high: 'above' }[verdict];
  const says = say`${amount(value, end)} is ${place} the band of ${low} to ${high}.`;
  const faults = { in_band: [], low: below, high: above }[verdict];
  return { check: id, verdict, says, faults, evidence };
}

/**
 * Judges a reading against the band of its check, in a sentence, with the faults that explain it.
 *
 * The ends of a band are in it.
 *
 * @param check - the check [record], one of commissionChecks
 * @param value - reading in the unit of the check, or whether it is met [unit of the check], finite; a boolean for a confirm check
 * @returns verdict, sentence, causes, and the answer for the table of faults [record]
 * @source none: bookkeeping
 * @example
 * const check = { id: 'current', kind: 'measure', quantity: 'current', unit: 'A', expected: 800, least: 766, most: 834, below: [], above: [], hints: {}, evidence: 'current' };
 * judgeReading(check, 700).verdict // => "low"
 * sentenceText(judgeReading(check, 700).says, 'inch') // => "700 A is below the band of 766 A to 834 A."
 */
export function judgeReading(check: CommissionCheck, value: number | boolean): ReadingJudgement {
  if (check.kind === 'measure') {
    if (typeof value !== 'number' || !Number.isFinite(value))
      throw new RangeError(`a reading of ${check.id} must be a finite number, not ${value}`);
    return judgeMeasure(check, value);
  }
  if (typeof value !== 'boolean') throw new RangeError(`${check.id} is met or not, it has no reading`);
  const outcome = value ? 'no' : 'yes';
  const evidence = check.evidence === null ? null : ({ observable: check.evidence, outcome } as const);
  return {
    check: check.id,
    verdict: value ? 'met' : 'not_met',
    says: `${check.title}: ${value ? '' : 'not '}as it should be.`,
    faults: value ? [] : check.unmet,
    evidence,
  };
}

/**
 * Gathers judged readings into what was seen, for the ranking of faults.
 *
 * Several checks can answer the same question, such as the millivolts of each joint; one out of its band outweighs
 * those in theirs, and of several the first is taken.
 *
 * @param judgements - judged readings [list], in the order in which they were taken
 * @returns answers by identifier of the observable [record]
 * @source none: bookkeeping
 * @example
 * evidenceOf([{ evidence: { observable: 'joint_millivolts', outcome: 'in' } }, { evidence: { observable: 'joint_millivolts', outcome: 'high' } }]) // => {"joint_millivolts":"high"}
 */
export function evidenceOf(judgements: readonly ReadingJudgement[]): FaultEvidence {
  const answers: Record<string, FaultOutcome> = {};
  for (const { evidence } of judgements) {
    if (evidence === null) continue;
    const standing = answers[evidence.observable];
    if (standing === undefined || standing === 'in' || standing === 'no')
      answers[evidence.observable] = evidence.outcome;
  }
  return answers;
}
