import type { JobField, QuantityKind, UnitSystem } from '@furrow/engine';

/** The unit of a box by the kind of its amount, where a shop that works in a system of units has one only. */
const UNITS: Readonly<Partial<Record<QuantityKind, Readonly<Record<UnitSystem, string>>>>> = {
  voltage: { metric: 'V', inch: 'V' },
  current: { metric: 'A', inch: 'A' },
  angle: { metric: 'deg', inch: 'deg' },
  share: { metric: '%', inch: '%' },
  temperature: { metric: '°C', inch: '°F' },
  pressure: { metric: 'bar', inch: 'psi' },
  speed: { metric: 'mm/min', inch: 'in/min' },
  air_flow: { metric: 'L/min', inch: 'scfm' },
};

/** Greatest length of a box that is read in millimetres or inches; longer ones may be meant in metres or feet [m]. */
const SHORT_MOST = 1;

/**
 * The unit that a number typed without one is meant in: the box shows it. Undefined where it could be meant in several,
 * such as a time, or the length of a seam: there the reader of the file asks.
 */
export function boxUnit(field: JobField, system: UnitSystem): string | undefined {
  if (field.kind === undefined) return undefined;
  if (field.kind !== 'length') return UNITS[field.kind]?.[system];
  if (field.most === undefined || field.most > SHORT_MOST) return undefined;
  return system === 'inch' ? 'in' : 'mm';
}

/** A number as people type it, whole, decimal or a fraction, with nothing after it. */
const BARE = /^[+-]?(?:\d+(?:[.,]\d{1,2}|\.\d+)?|\d+\/\d+|\d+[ -]\d+\/\d+)$/u;

/** Whether a text is a number and nothing more. */
export function isBareNumber(text: string): boolean {
  return BARE.test(text.trim());
}
