import { findUnit, type KnownUnit } from './find-unit.ts';
import type { QuantityKind } from './quantity-kind.ts';
import { readNumber } from './read-number.ts';
import { splitTerm } from './split-term.ts';

/** Kinds whose amounts are written in steps: `5 ft 6 in`, `1 h 20 min`. */
const STEPPED: ReadonlySet<QuantityKind> = new Set(['length', 'time']);

function readStep(term: string, kind: QuantityKind): { count: number; unit: KnownUnit } | undefined {
  const { number, unit: spelling } = splitTerm(term);
  const reading = readNumber(number);
  const unit = findUnit(spelling);
  return reading.kind === 'one' && reading.value >= 0 && unit?.kind === kind
    ? { count: reading.value, unit }
    : undefined;
}

/** SI value of an amount in several units, each smaller than the one before; undefined if it is not one. */
export function readCompound(plain: string, kind: QuantityKind): number | undefined {
  if (!STEPPED.has(kind)) return undefined;
  const sign = plain.startsWith('-') ? -1 : 1;
  const terms = plain.replace(/^[-+]/, '').split(/(?<=[a-z'"])(?<!\d ?e)(?:[.,] )?[ -]*(?=\.?\d)/i);
  if (terms.length < 2) return undefined;
  let total = 0;
  let larger: number | undefined;
  for (const [index, term] of terms.entries()) {
    const step = readStep(term, kind);
    if (!step) return undefined;
    const last = index === terms.length - 1;
    const value = step.unit.scale.toSi(step.count);
    const fits = larger === undefined || value < larger * (1 - 1e-12);
    if (!fits || (!last && !Number.isInteger(step.count))) return undefined;
    total += value;
    larger = step.unit.scale.toSi(1);
  }
  return sign * total;
}
