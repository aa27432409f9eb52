import { formatStated, type RunReport, type UnitSystem } from '@furrow/engine';
import { placeWords } from './run-words.ts';

/** A recut in one line: where, at which setting, and how surely it brings the stretch to depth. */
export function runRecutWords(recut: RunReport['stretches'][number]['recut'], units: UnitSystem): string {
  if (recut === null) return 'none proposed';
  const settings = [
    formatStated(recut.travel_mm_per_min, 'mm/min', units),
    formatStated(recut.current_A, 'A', units),
    formatStated(recut.arc_voltage_V, 'V', units),
    `dwell ${formatStated(recut.dwell_s, 's', units)}`,
  ];
  const { chances, passes, passes_before_gauge: before, gauge } = recut;
  const steps =
    gauge === null
      ? passes === 1
        ? ''
        : `, ${passes} passes`
      : before === 0
        ? `; gauge first, ${passes === 1 ? 'one pass' : `${passes} passes`} by its table`
        : `; ${before} of ${passes} passes so, gauge, the rest by its table`;
  const percent = (chance: number): string => `${Math.floor(100 * chance)} %`;
  const surely =
    chances === null
      ? ''
      : `; deep enough ${percent(chances.reached)}, not too deep ${percent(chances.not_too_deep)}`;
  return `${placeWords(recut.from_mm, recut.to_mm, units)} at ${settings.join(', ')}${steps}${surely}`;
}
