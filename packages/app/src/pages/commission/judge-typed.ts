import {
  type CommissionCheck,
  type Issue,
  judgeReading,
  parseAmount,
  type ReadingJudgement,
  readReading,
} from '@furrow/engine';

/** What a typed reading comes to: nothing yet, not readable, or judged. */
export type TypedReading =
  | { readonly is: 'none' }
  | { readonly is: 'unread'; readonly issue: Issue }
  | { readonly is: 'judged'; readonly judgement: ReadingJudgement };

/** Reads and judges what was typed at a check. */
export function judgeTyped(check: CommissionCheck, text: string): TypedReading {
  if (text.trim() === '') return { is: 'none' };
  const read = readReading(check, text);
  if (!read.ok) return { is: 'unread', issue: read.issues[0]! };
  return { is: 'judged', judgement: judgeReading(check, read.value) };
}

/** What was typed as a number in SI units; null where it is no number [SI unit]. */
export function typedValue(check: CommissionCheck, text: string): number | null {
  if (check.kind === 'confirm' || text.trim() === '') return null;
  const amount = parseAmount(text, check.quantity);
  return amount.ok ? amount.value : null;
}
