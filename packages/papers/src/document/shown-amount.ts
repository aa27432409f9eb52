import { formatAmount, type UnitSystem } from '@furrow/engine';
import { fineLength } from '../drawing/index.ts';

/** Writes a number of a result, whose unit stands beside it, in the reader's units. */
export function shownAmount(value: number, unit: string, units: UnitSystem): string {
  switch (unit) {
    case 'mm':
      return fineLength(value / 1000, units);
    case 'mm/min':
    case 'mm_per_min':
      return formatAmount(value / 60_000, 'speed', units);
    case 'deg':
      return formatAmount((value * Math.PI) / 180, 'angle', units);
    case 'degC':
    case '°C':
      return formatAmount(value + 273.15, 'temperature', units);
    case 'kPa':
      return units === 'inch' ? formatAmount(value * 1000, 'pressure', units) : `${plainNumber(value)} kPa`;
    case 'L/min':
      return units === 'inch'
        ? formatAmount(value / 60_000, 'air_flow', units)
        : `${plainNumber(value)} L/min`;
    case 'm':
      return formatAmount(value, 'length', units);
    case '-':
    case '':
      return plainNumber(value);
    default:
      return `${plainNumber(value)} ${unit}`;
  }
}

/** Four figures; a chance or a share keeps what tells it apart from its limit. */
function plainNumber(value: number): string {
  return String(Number(value.toPrecision(4)));
}
