export { type EdgeUnit, inUnit } from './edge-unit.ts';
export { exactAmount } from './exact-amount.ts';
export { unitsOf } from './find-unit.ts';
export { type FormatOptions, formatAmount } from './format-amount.ts';
export { formatBound } from './format-bound.ts';
export { formatReported } from './format-reported.ts';
export { parseAmount } from './parse-amount.ts';
export { QUANTITY_KINDS, type QuantityKind, type UnitSystem } from './quantity-kind.ts';
