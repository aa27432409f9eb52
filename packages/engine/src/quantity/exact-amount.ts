import { unitNamed } from './find-unit.ts';
import type { QuantityKind, UnitSystem } from './quantity-kind.ts';

/** Unit each kind is written in, by system; one unit whatever the size, so that documents compare. */
export const DOCUMENT_UNITS: Readonly<Record<QuantityKind, Readonly<Record<UnitSystem, string>>>> = {
  length: { inch: 'in', metric: 'mm' },
  speed: { inch: 'in/min', metric: 'mm/min' },
  pressure: { inch: 'psi', metric: 'bar' },
  current: { inch: 'A', metric: 'A' },
  voltage: { inch: 'V', metric: 'V' },
  time: { inch: 's', metric: 's' },
  angle: { inch: 'deg', metric: 'deg' },
  area: { inch: 'in2', metric: 'mm2' },
  temperature: { inch: '°F', metric: '°C' },
  air_flow: { inch: 'scfm', metric: 'L/min' },
  power: { inch: 'hp', metric: 'kW' },
  share: { inch: '%', metric: '%' },
  volume: { inch: 'gal', metric: 'L' },
  resistance: { inch: 'mohm', metric: 'mohm' },
};

/**
 * Writes an amount so that reading it again gives the same value, for documents.
 *
 * Twelve figures are kept, so a value that was written as 9.5 mm comes back as `9.5 mm`.
 *
 * @param value - amount in the SI unit of its kind [SI unit of the kind], any finite number
 * @param kind - kind of quantity [text], one of the QuantityKind names
 * @param system - units to write in [text], inch or metric
 * @returns text that parseAmount reads back within 1e-9 of the value [text]
 * @source none: bookkeeping
 * @example
 * exactAmount(0.0095, 'length', 'metric') // => "9.5 mm"
 */
export function exactAmount(value: number, kind: QuantityKind, system: UnitSystem): string {
  if (!Number.isFinite(value)) throw new RangeError(`an amount must be finite, not ${value}`);
  const unit = unitNamed(DOCUMENT_UNITS[kind][system]);
  return `${Number(unit.scale.fromSi(value).toPrecision(12))} ${unit.name}`;
}
