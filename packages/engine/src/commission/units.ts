import type { QuantityKind, StatedUnit } from '../quantity/index.ts';
import type { CommissionUnit } from './check.ts';

/** Kind of quantity of each unit of a reading. */
export const READING_KINDS: Readonly<Record<CommissionUnit & StatedUnit, QuantityKind>> = {
  V: 'voltage',
  mV: 'voltage',
  A: 'current',
  kPa: 'pressure',
  mm: 'length',
  deg: 'angle',
  s: 'time',
  degC: 'temperature',
};
