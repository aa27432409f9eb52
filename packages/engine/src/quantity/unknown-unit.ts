import type { Outcome } from '../issue/index.ts';
import { figures, refuse, WRITTEN_EXAMPLES } from './amount-issue.ts';
import { findUnit, nearestUnit } from './find-unit.ts';
import { KIND_NAMES, type QuantityKind } from './quantity-kind.ts';
import type { ReadNumber } from './read-number.ts';

/** Refuses a unit of another kind, or one that is not known, with the nearest that is. */
export function refuseUnit(
  text: string,
  spelling: string,
  reading: ReadNumber,
  kind: QuantityKind,
): Outcome<never> {
  const known = findUnit(spelling);
  const examples = WRITTEN_EXAMPLES[kind].slice(0, 2).join('" or "');
  if (known) {
    const message = `"${text}" is ${KIND_NAMES[known.kind]}; ${KIND_NAMES[kind]} is wanted, such as "${examples}".`;
    return refuse('AMOUNT_KIND', text, kind, message);
  }
  const near = nearestUnit(spelling, kind);
  if (near === undefined || reading.kind === 'two') {
    const message = `The unit "${spelling}" is not known here: write for example "${examples}".`;
    return refuse('AMOUNT_UNIT', text, kind, message, near);
  }
  const nearest = `${figures(reading.value)} ${near}`;
  const message = `The unit "${spelling}" is not known here: did you mean "${nearest}"?`;
  return refuse('AMOUNT_UNIT', text, kind, message, nearest);
}
