import { formatStated, formatStatedBand, type GaugeRow, type UnitSystem } from '@furrow/engine';

/** The readings a row is for, in words. */
export function readingText(row: GaugeRow, units: UnitSystem): string {
  const from = formatStated(row.reading_from_mm, 'mm', units);
  if (row.reading_to_mm === null) return `${from} or more`;
  if (row.reading_from_mm <= 0) return `less than ${formatStated(row.reading_to_mm, 'mm', units)}`;
  return formatStatedBand(row.reading_from_mm, row.reading_to_mm, 'mm', units);
}

/** What a row says to do, in words. */
export function actionText(row: GaugeRow, units: UnitSystem): string {
  if (row.action === 'run' && row.travel_mm_per_min !== null) {
    return `run the next pass at ${formatStated(row.travel_mm_per_min, 'mm/min', units)}`;
  }
  return row.action === 'done' ? 'done: run no more passes' : 'stop and ask the welding engineer';
}
