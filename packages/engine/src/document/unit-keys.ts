import type { QuantityKind } from '../quantity/index.ts';

/** Unit suffixes a key may carry, such as `thickness_mm: 32`, and how the unit is written in an amount. */
export const UNIT_SUFFIXES: Partial<Record<QuantityKind, Readonly<Record<string, string>>>> = {
  length: { mm: 'mm', cm: 'cm', m: 'm', in: 'in', ft: 'ft' },
  speed: { mm_per_min: 'mm/min', mm_per_s: 'mm/s', m_per_min: 'm/min', in_per_min: 'in/min' },
  current: { A: 'A' },
  voltage: { V: 'V' },
  time: { s: 's', min: 'min', h: 'h' },
  angle: { deg: 'deg' },
  share: { percent: '%' },
  pressure: { kPa: 'kPa', bar: 'bar', psi: 'psi' },
  area: { mm2: 'mm2', kcmil: 'kcmil' },
  temperature: { C: '°C', F: '°F' },
  air_flow: { L_per_min: 'L/min', scfm: 'scfm' },
  volume: { L: 'L', m3: 'm3', gal: 'gal' },
  resistance: { mohm: 'mohm', ohm: 'ohm' },
};

/** Splits a key such as `thickness_mm` into a field of this kind and the unit; undefined if it is not one. */
export function unitOfKey(key: string, field: string, kind: QuantityKind): string | undefined {
  if (!key.startsWith(`${field}_`)) return undefined;
  const units = UNIT_SUFFIXES[kind];
  const suffix = key.slice(field.length + 1);
  return units !== undefined && Object.hasOwn(units, suffix) ? units[suffix] : undefined;
}
