import { formatStated, type RunReport, type UnitSystem } from '@furrow/engine';
import { placeWords } from '@furrow/papers';

/** A recut in one line. */
export function recutWords(recut: RunReport['stretches'][number]['recut'], units: UnitSystem): string {
  if (recut === null) return 'none proposed';
  const settings = [
    formatStated(recut.travel_mm_per_min, 'mm/min', units),
    formatStated(recut.current_A, 'A', units),
    formatStated(recut.arc_voltage_V, 'V', units),
    `dwell ${formatStated(recut.dwell_s, 's', units)}`,
  ];
  return `${placeWords(recut.from_mm, recut.to_mm, units)} at ${settings.join(', ')}`;
}
