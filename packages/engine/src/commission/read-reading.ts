import type { Outcome } from '../issue/index.ts';
import { inUnit, parseAmount } from '../quantity/index.ts';
import type { CommissionCheck } from './check.ts';

const MET: ReadonlySet<string> = new Set(['yes', 'y', 'ok', 'done', 'true']);
const UNMET: ReadonlySet<string> = new Set(['no', 'n', 'not ok', 'false']);

/**
 * Reads what was typed at a check: an amount with its unit, or yes or no.
 *
 * @param check - the check it was typed at [record], one of commissionChecks
 * @param text - what was typed [text], an amount such as 44.2 V, or yes or no
 * @returns the reading in the unit of the check, or whether the check is met, or why it cannot be read [unit of the check]
 * @source none: bookkeeping
 * @example
 * const check = { kind: 'measure', quantity: 'pressure', unit: 'kPa', title: 'Flowing air pressure' };
 * readReading(check, '90 psi') // => {"ok":true,"value":620.528}
 */
export function readReading(check: CommissionCheck, text: string): Outcome<number | boolean> {
  if (check.kind === 'measure') {
    const amount = parseAmount(text, check.quantity);
    return amount.ok ? { ok: true, value: inUnit(amount.value, check.unit) } : amount;
  }
  const answer = text.trim().toLowerCase().slice(0, 20);
  if (MET.has(answer)) return { ok: true, value: true };
  if (UNMET.has(answer)) return { ok: true, value: false };
  const message = `"${answer}" is no answer to "${check.title}": type yes or no.`;
  return {
    ok: false,
    issues: [{ code: 'COMMISSION_READING', message, path: '', read: answer, accepted: 'yes or no' }],
  };
}
