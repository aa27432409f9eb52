import { FOOT, formatAmount, INCH, MM, type UnitSystem } from '@furrow/engine';
import { niceStep } from './nice-step.ts';

/** The unit an axis of lengths is marked in, and its step. */
export interface LengthAxis {
  /** Name of the unit, as written at the axis. */
  readonly unit: 'mm' | 'm' | 'in' | 'ft';
  /** One unit [m]. */
  readonly metres: number;
  /** Distance of the ticks [m]. */
  readonly step: number;
  /** Decimals that tell neighbouring ticks apart [-]. */
  readonly decimals: number;
}

const UNITS = {
  metric: [
    { unit: 'm', metres: 1 },
    { unit: 'mm', metres: MM },
  ],
  inch: [
    { unit: 'ft', metres: FOOT },
    { unit: 'in', metres: INCH },
  ],
} as const;

/** Chooses unit and step so that at most `ticksMost` ticks lie on the length. */
export function lengthAxis(length: number, ticksMost: number, units: UnitSystem): LengthAxis {
  const [large, small] = UNITS[units];
  const chosen = length >= 2 * large.metres ? large : small;
  const least = length / chosen.metres / Math.max(1, ticksMost);
  const step = niceStep(least);
  return {
    ...chosen,
    step: step * chosen.metres,
    decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  };
}

/** Writes a place on the axis, without the unit. */
export function axisText(axis: LengthAxis, place: number): string {
  const text = (place / axis.metres).toFixed(axis.decimals);
  return Number(text) === 0 ? '0' : text.replace('-', '−');
}

/** Less than this over a whole foot is none [m]. */
const INCHES_LEAST = INCH / 32;

/** Writes a place beside an axis of this length, in the unit of its ticks: feet are told with their inches. */
export function axisPlaceText(length: number, place: number, units: UnitSystem): string {
  const { unit } = lengthAxis(length, 1, units);
  if (unit === 'mm') return formatAmount(place, 'length', units, { unit, decimals: 0 });
  if (unit === 'm') return formatAmount(place, 'length', units, { unit, decimals: 2 });
  const text = formatAmount(place, 'length', units);
  const inches = place - FOOT;
  // a tape is read in inches up to two feet
  if (unit === 'in' || inches < -INCHES_LEAST || text.includes('ft')) return text;
  return inches < INCHES_LEAST ? '1 ft' : `1 ft ${formatAmount(inches, 'length', units)}`;
}
