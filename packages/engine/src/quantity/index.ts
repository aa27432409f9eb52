export { type Amount, type AmountKind, amountOf, boundOf, readOffOf } from './amount.ts';
export { exactAmount } from './exact-amount.ts';
export { type NamedUnit, unitOf, unitsOf } from './find-unit.ts';
export {
  type FormatOptions,
  formatAmount,
  formatApart,
  formatBand,
  shownNumber,
  siOfShown,
} from './format-amount.ts';
export { formatBound, formatReadOff } from './format-bound.ts';
export { formatConductor } from './format-conductor.ts';
export { rateOf, type ShownRate } from './format-rate.ts';
export { formatStated, formatStatedApart, formatStatedBand, statedApart } from './format-stated.ts';
export { formatUncertain } from './format-uncertain.ts';
export { parseAmount } from './parse-amount.ts';
export { QUANTITY_KINDS, type QuantityKind, type UnitSystem } from './quantity-kind.ts';
export {
  amountText,
  capitalised,
  joinSentences,
  type Reader,
  type Sentence,
  say,
  sentencesWritten,
  sentenceText,
  type Written,
} from './sentence.ts';
export { sentenceSchema } from './sentence-schema.ts';
export { FOOT, INCH, MM, MM_PER_MIN, PSI, ZERO_CELSIUS } from './si.ts';
export { type EdgeUnit, fromUnit, inUnit, kindOfUnit, STATED_UNITS, type StatedUnit } from './stated-unit.ts';
