import type { Outcome } from '../issue/index.ts';
import { refuse, WRITTEN_EXAMPLES } from './amount-issue.ts';
import { readCompound } from './compound-amount.ts';
import { KIND_NAMES, type QuantityKind } from './quantity-kind.ts';

/** What is wrong with a text that holds no readable number, where that can be told. */
function diagnose(plain: string, kind: QuantityKind): { advice: string; nearest: string } {
  const [example] = WRITTEN_EXAMPLES[kind];
  const ask = `write one number and one unit, such as "${example}"`;
  if (kind === 'area' && /^#? ?[1-4] ?\/ ?0$/.test(plain)) {
    const nearest = `${plain.replace(/[# ]/g, '')} AWG`;
    return { advice: `for a wire gauge write "${nearest}"`, nearest };
  }
  if (/\/ ?0+(?!\d)/.test(plain))
    return { advice: 'a fraction cannot have 0 below the line', nearest: example };
  if (/^[\d.,/ ]+(?:-|–|to|\.\.+)[\d.,/ ]+/.test(plain)) {
    return { advice: `a range is not accepted here; ${ask}`, nearest: example };
  }
  return { advice: ask, nearest: example };
}

/** Refuses a text in which no number can be read. */
export function refuseUnreadable(text: string, plain: string, kind: QuantityKind): Outcome<never> {
  if (plain === '') {
    const examples = WRITTEN_EXAMPLES[kind].slice(0, 2).join('" or "');
    return refuse('AMOUNT_NOT_UNDERSTOOD', text, kind, `Nothing is written here: write "${examples}".`);
  }
  const { advice, nearest } = diagnose(plain, kind);
  const message = `"${text}" cannot be read as ${KIND_NAMES[kind]}: ${advice}.`;
  return refuse('AMOUNT_NOT_UNDERSTOOD', text, kind, message, nearest);
}

/** Refuses `5' 6`: feet followed by a number without its unit. */
export function refuseOpenInches(
  text: string,
  plain: string,
  kind: QuantityKind,
): Outcome<never> | undefined {
  const found = /^(.*(?:'|ft|foot|feet)\.?) ?-? ?([\d.,/ -]+)$/i.exec(plain);
  if (kind !== 'length' || !found) return undefined;
  const nearest = `${found[1]} ${found[2]} in`;
  if (readCompound(nearest, kind) === undefined) return undefined;
  const message = `"${text}" ends in a number without a unit: if inches are meant, write "${nearest}".`;
  return refuse('AMOUNT_NOT_UNDERSTOOD', text, kind, message, nearest);
}
