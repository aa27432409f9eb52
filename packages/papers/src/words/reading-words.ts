import { amountText, bandEnd, type MeasureCheck, readingAmount, type UnitSystem } from '@furrow/engine';

/** A reading of a check, on the scale of the instrument it is read from. */
export function checkReading(check: MeasureCheck, value: number, units: UnitSystem): string {
  return amountText(readingAmount(check, value), units);
}

/** Both ends of the band of a check. */
export function checkBand(check: MeasureCheck, units: UnitSystem): string {
  return `${amountText(bandEnd(check, 'least'), units)} to ${amountText(bandEnd(check, 'most'), units)}`;
}
