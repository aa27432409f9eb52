import type { FaultBehind, FaultEvidence, FaultOutcome } from '../faults/index.ts';
import { formatAmount, formatApart, fromUnit, type UnitSystem } from '../quantity/index.ts';
import type { CommissionCheck, MeasureCheck } from './check.ts';
import { READING_KINDS } from './units.ts';

/** What a reading means. */
export interface ReadingJudgement {
  /** Identifier of the check. */
  readonly check: string;
  readonly verdict: 'in_band' | 'low' | 'high' | 'met' | 'not_met';
  readonly words: string;
  /** Causes that explain it, the likeliest first; none where it is as it should be. */
  readonly faults: readonly FaultBehind[];
  /** The answer it gives to the table of faults; null where the table does not ask. */
  readonly evidence: { readonly observable: string; readonly outcome: FaultOutcome } | null;
}

function shown(check: MeasureCheck, value: number, system: UnitSystem): string {
  // a shop reads these on a scale in this very unit, whatever its system
  const options = check.unit === 'mV' || check.unit === 's' ? { unit: check.unit } : {};
  return formatAmount(fromUnit(value, check.unit), READING_KINDS[check.unit], system, options);
}

/** A reading and the end of the band that it is beyond, so written that they differ. */
function apart(check: MeasureCheck, value: number, end: number, system: UnitSystem): [string, string] {
  const usual: [string, string] = [shown(check, value, system), shown(check, end, system)];
  if (usual[0] !== usual[1]) return usual;
  const [read, passed] = formatApart(
    fromUnit(value, check.unit),
    fromUnit(end, check.unit),
    READING_KINDS[check.unit],
    system,
  );
  if (read !== passed) return [read!, passed!];
  // Lengths in fractions and times have no finer writing: the number itself tells.
  const digits = (one: number): string => `${Number(one.toPrecision(6))} ${check.unit}`;
  return [digits(value), digits(end)];
}

function causes(faults: readonly FaultBehind[], hint: string | undefined): string {
  if (faults.length === 0) return hint ?? 'Find out why before going on.';
  const told = faults.map(({ title, remedy }) => `${title}. ${remedy}`);
  const all = hint === undefined ? told : [...told, hint];
  return `It can come from: ${all.join(' Or: ')}`;
}

function judgeMeasure(check: MeasureCheck, value: number, system: UnitSystem): ReadingJudgement {
  const verdict = value < check.least ? 'low' : value > check.most ? 'high' : 'in_band';
  const end = verdict === 'low' ? check.least : check.most;
  const [read, passed] =
    verdict === 'in_band' ? [shown(check, value, system)] : apart(check, value, end, system);
  const [least, most] = [shown(check, check.least, system), shown(check, check.most, system)];
  const band = verdict === 'low' ? `${passed} to ${most}` : `${least} to ${passed ?? most}`;
  const outcome: FaultOutcome = verdict === 'in_band' ? 'in' : verdict;
  const evidence = check.evidence === null ? null : { observable: check.evidence, outcome };
  if (verdict === 'in_band')
    return { check: check.id, verdict, words: `${read} is in the band of ${band}.`, faults: [], evidence };
  const faults = verdict === 'low' ? check.below : check.above;
  const side = verdict === 'low' ? 'below' : 'above';
  const words = `${read} is ${side} the band of ${band}. ${causes(faults, check.hints[verdict])}`;
  return { check: check.id, verdict, words, faults, evidence };
}

/**
 * Judges a reading against the band of its check, with words and the faults that explain it.
 *
 * The ends of a band are in it.
 *
 * @param check - the check [record], one of commissionChecks
 * @param value - reading in the unit of the check, or whether it is met [unit of the check], finite; a boolean for a confirm check
 * @param system - units of the words [text], inch or metric
 * @returns verdict, words, causes, and the answer for the table of faults [record]
 * @source none: bookkeeping
 * @example
 * const check = { id: 'current', kind: 'measure', quantity: 'current', unit: 'A', expected: 800, least: 766, most: 834, below: [], above: [], hints: {}, evidence: 'current' };
 * judgeReading(check, 700, 'metric').verdict // => "low"
 */
export function judgeReading(
  check: CommissionCheck,
  value: number | boolean,
  system: UnitSystem,
): ReadingJudgement {
  if (check.kind === 'measure') {
    if (typeof value !== 'number' || !Number.isFinite(value))
      throw new RangeError(`a reading of ${check.id} must be a finite number, not ${value}`);
    return judgeMeasure(check, value, system);
  }
  if (typeof value !== 'boolean') throw new RangeError(`${check.id} is met or not, it has no reading`);
  const outcome = value ? 'no' : 'yes';
  const evidence = check.evidence === null ? null : ({ observable: check.evidence, outcome } as const);
  if (value)
    return {
      check: check.id,
      verdict: 'met',
      words: `${check.title}: as it should be.`,
      faults: [],
      evidence,
    };
  const words = `${check.title}: not as it should be. ${causes(check.unmet, check.hints.unmet)}`;
  return { check: check.id, verdict: 'not_met', words, faults: check.unmet, evidence };
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
