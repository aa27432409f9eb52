import { formatAmount, formatStated, type GaugeRow, type GaugeStop, type UnitSystem } from '@furrow/engine';
import { fineStated } from './length-text.ts';

const MM_PER_INCH = 25.4;

/** A bound of a reading: in thousandths of an inch, as hundredths would give neighbouring rows the same bounds. */
function boundText(reading_mm: number, units: UnitSystem): string {
  return units === 'inch' ? (reading_mm / MM_PER_INCH).toFixed(3) : fineStated(reading_mm, units);
}

/** The readings for which a row holds, in words. */
export function readingText(row: GaugeRow, units: UnitSystem): string {
  const from = boundText(row.reading_from_mm, units);
  if (row.reading_to_mm === null) return `${from} and deeper`;
  const to = boundText(row.reading_to_mm, units);
  return row.reading_from_mm <= 0 ? `below ${to}` : `${from} to ${to}`;
}

/** What a row asks for, in words. */
export function actionText(row: GaugeRow, units: UnitSystem): string {
  if (row.action === 'done') return 'run no more passes';
  if (row.action === 'ask' || row.travel_mm_per_min === null) return 'stop, ask the welding engineer';
  return `travel ${formatAmount(row.travel_mm_per_min / 60_000, 'speed', units)}`;
}

/** Where to gauge, with what spread, in one or two sentences. */
export function gaugePlaces(stop: GaugeStop, units: UnitSystem): string {
  const places = stop.station_positions_mm.map((place) => formatStated(place, 'mm', units, 'length'));
  const stations = `${stop.stations} station${stop.stations === 1 ? '' : 's'}`;
  return (
    `Clean and gauge each track at ${stations}: ${places.join(', ')} from the start. ` +
    `The mean is the reading; one reading spreads by ${formatStated(stop.reading_sd_mm, 'mm', units, 'length')}.`
  );
}
