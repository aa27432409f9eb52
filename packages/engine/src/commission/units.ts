import type { QuantityKind } from '../quantity/index.ts';
import type { CommissionUnit } from './check.ts';

/** Kind of quantity and size of each unit of a reading, per SI unit. */
export const READING_UNITS: Readonly<
  Record<CommissionUnit, { readonly quantity: QuantityKind; readonly perSi: number }>
> = {
  V: { quantity: 'voltage', perSi: 1 },
  mV: { quantity: 'voltage', perSi: 1e3 },
  A: { quantity: 'current', perSi: 1 },
  kPa: { quantity: 'pressure', perSi: 1e-3 },
  mm: { quantity: 'length', perSi: 1e3 },
  deg: { quantity: 'angle', perSi: 180 / Math.PI },
  s: { quantity: 'time', perSi: 1 },
};
