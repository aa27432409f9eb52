import { formatAmount, fromUnit, type RunReport, type UnitSystem } from '@furrow/engine';

/** A kind of event as people call it. */
export type RunEventKind = RunReport['events'][number]['kind'];

const NAMES: Readonly<Record<RunEventKind, string>> = {
  touch_down: 'Touch-down',
  arc_out: 'Arc out',
  short: 'Short',
  restart_short: 'Short at a restart',
  electrode_change: 'Electrode change',
  voltage_drift: 'Voltage drift',
  current_drift: 'Current drift',
  stall: 'Carriage stood',
  slip: 'Wheel slipped',
  low_air: 'Low air',
  feed_stop: 'Feed stopped',
  gap: 'Logger silent',
  clock_step: 'Clock moved',
  stale_reading: 'Stale reading',
  spike: 'Spike',
};

/** The name of a kind of event. */
export function eventName(kind: RunEventKind): string {
  return NAMES[kind];
}

/** A place on the seam, or a stretch of it, with figures enough to tell its ends apart [mm in]. */
export function placeWords(from: number, to: number, units: UnitSystem): string {
  const at = (mm: number): string => formatAmount(fromUnit(mm, 'mm'), 'seam_place', units);
  return at(from) === at(to) ? `at ${at(from)}` : `${at(from)} to ${at(to)}`;
}

/** Elapsed time of a log as a clock shows it, to a tenth of a second [s in]. */
export function elapsedWords(seconds: number): string {
  const tenths = Math.round(seconds * 10);
  const two = (value: number): string => String(value).padStart(2, '0');
  const [hours, minutes] = [Math.floor(tenths / 36_000), Math.floor(tenths / 600) % 60];
  const rest = `${two(Math.floor(tenths / 10) % 60)}.${tenths % 10}`;
  return hours > 0 ? `${hours}:${two(minutes)}:${rest}` : `${minutes}:${rest}`;
}
