import {
  formatAmount,
  formatStated,
  formatStatedBand,
  type NextTrialReport,
  type UnitSystem,
} from '@furrow/engine';

/** How the next trial is cut, in a line. */
export function nextTrialSetting(trial: NextTrialReport, units: UnitSystem): string {
  const electrode = formatStated(trial.electrode_diameter_mm, 'mm', units, 'length');
  const where = trial.position === 'flat' ? '' : `, ${trial.position.replace('_', ' ')}`;
  const places = trial.stations === 1 ? 'one place' : `${trial.stations} places`;
  return (
    `${trial.metal.replaceAll('_', ' ')}${where}: ${electrode} ${trial.electrode_kind}, ${formatStated(trial.current_A, 'A', units)} at ` +
    `${formatStated(trial.arc_voltage_V, 'V', units)}, ${formatStated(trial.travel_mm_per_min, 'mm/min', units)} over ` +
    `${formatStated(trial.length_mm, 'mm', units, 'length')}, gauged at ${places}`
  );
}

/** What the next trial is expected to give and to teach, in sentences. */
export function nextTrialWords(trial: NextTrialReport, units: UnitSystem): string {
  const band = formatStatedBand(trial.depth_mm.p05, trial.depth_mm.p95, 'mm', units);
  const [before, after] = [trial.doubt_before, trial.doubt_after].map(
    (sd) => `± ${(164.5 * sd).toFixed(0)} %`,
  );
  return (
    `Expect ${band} (90 %). In ${formatAmount(trial.time_s, 'time', units)} it brings what is not known of the depth from ` +
    `${before} to ${after} on the mean. The chance that it comes out deeper than one pass may be is ` +
    `${formatAmount(trial.leaves_window, 'share', 'metric')}; that is a chance, and no setting is safe.`
  );
}
