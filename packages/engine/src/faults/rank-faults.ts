import type { Outcome } from '../issue/index.ts';
import type { FaultEvidence, FaultModel } from './model.ts';
import { posteriorOf } from './posterior.ts';
import { readEvidence } from './read-evidence.ts';
import { type FaultReason, reasonsOf } from './reasons.ts';

/** One cause with its probability and what speaks for and against it. */
export interface RankedFault {
  /** Identifier of the cause. */
  readonly cause: string;
  readonly title: string;
  /** Probability that this is the cause, after what was seen [-]. */
  readonly probability: number;
  readonly mechanism: string;
  readonly remedy: string;
  readonly reasons: readonly FaultReason[];
  /** Why it stands where it does, in words. */
  readonly words: string;
}

function percent(probability: number): string {
  if (probability < 0.01) return 'less than 1 %';
  if (probability > 0.99) return 'more than 99 %';
  return `${Math.round(probability * 100)} %`;
}

function wordsOf(title: string, probability: number, reasons: readonly FaultReason[]): string {
  const start = `${title}: ${percent(probability)}.`;
  const spoken = reasons.slice(0, 3).map(({ words }) => words);
  if (spoken.length === 0) return `${start} Nothing seen so far speaks for or against it.`;
  return [start, ...spoken].join(' ');
}

/**
 * Ranks the causes of trouble by their probability after what was seen.
 *
 * Bayes' rule over causes of which exactly one is at work; what is seen is independent given the cause. `none_of_these`
 * stands for all that the table does not hold. Evidence that contradicts itself still gives probabilities that sum to 1.
 *
 * @param model - the table of faults [record], one that checkFaultModel accepts
 * @param evidence - what was seen: yes, no, low, in, high or unknown by identifier [record], names of the table
 * @returns the causes, the likeliest first, or which evidence cannot be understood [list]
 * @source Bayes' rule; the chances in the table are judgement, no source
 * @example
 * const ranked = rankFaults(FAULT_MODEL, { hot_joint: 'yes', joint_millivolts: 'high' });
 * ranked.value[0].cause // => "loose_joint"
 */
export function rankFaults(model: FaultModel, evidence: FaultEvidence): Outcome<readonly RankedFault[]> {
  const read = readEvidence(model, evidence);
  if (!read.ok) return read;
  const posterior = posteriorOf(model, read.value);
  const spoken = reasonsOf(model, read.value);
  const ranked = model.causes.map(({ id, title, mechanism, remedy }, place): RankedFault => {
    const probability = posterior[place]!;
    const reasons = spoken[place]!;
    return {
      cause: id,
      title,
      probability,
      mechanism,
      remedy,
      reasons,
      words: wordsOf(title, probability, reasons),
    };
  });
  return { ok: true, value: ranked.sort((a, b) => b.probability - a.probability) };
}
