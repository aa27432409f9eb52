import type { Characteristic } from './power-source.ts';

/** A falling line of corners from no load on: current against voltage. */
export interface FallingLine {
  /** Currents of the corners, not falling [A]. */
  readonly currents: readonly number[];
  /** Voltages of the corners, falling [V]. */
  readonly voltages: readonly number[];
}

/** The characteristic as a falling line; a straight one ends in a short circuit. */
export function lineOf(characteristic: Characteristic): FallingLine {
  if (characteristic.kind === 'points') {
    return {
      currents: characteristic.points.map((point) => point.current),
      voltages: characteristic.points.map((point) => point.voltage),
    };
  }
  const { no_load_voltage, slope } = characteristic;
  return { currents: [0, no_load_voltage / slope], voltages: [no_load_voltage, 0] };
}

/**
 * Current that a characteristic gives at a terminal voltage.
 *
 * At or above the no-load voltage it gives none: rectifiers pass one way only. Below its last point it gives
 * the last point's current: nothing is extrapolated.
 *
 * @param characteristic - the source's curve [record], a checked source
 * @param voltage - at the terminals [V], any
 * @returns current [A]
 * @source geometry
 * @example
 * sourceCurrent({ kind: 'drooping', no_load_voltage: 80, slope: 0.02 }, 52.147) // => 1392.65
 */
export function sourceCurrent(characteristic: Characteristic, voltage: number): number {
  return currentAt(lineOf(characteristic), voltage);
}

/** Current of a falling line at a voltage [A]. */
export function currentAt({ currents, voltages }: FallingLine, voltage: number): number {
  if (voltage >= voltages[0]!) return 0;
  const lower = voltages.findIndex((corner) => corner <= voltage);
  if (lower < 0) return currents.at(-1)!;
  const [v0, v1] = [voltages[lower - 1]!, voltages[lower]!];
  const [i0, i1] = [currents[lower - 1]!, currents[lower]!];
  return i0 + ((v0 - voltage) / (v0 - v1)) * (i1 - i0);
}

/**
 * Voltage that a characteristic gives at a current.
 *
 * Zero beyond the greatest current it gives at all.
 *
 * @param characteristic - the source's curve [record], a checked source
 * @param current - of the source [A], >= 0
 * @returns voltage at the terminals [V]
 * @source geometry
 * @example
 * sourceVoltage({ kind: 'flat', no_load_voltage: 48, slope: 0.002 }, 625) // => 46.75
 */
export function sourceVoltage(characteristic: Characteristic, current: number): number {
  const { currents, voltages } = lineOf(characteristic);
  // Where the current does not change over a stretch, the source gives up to the stretch's upper voltage.
  const upper = currents.findIndex((corner) => corner >= current);
  if (upper < 0) return 0;
  if (upper === 0) return voltages[0]!;
  const [i0, i1] = [currents[upper - 1]!, currents[upper]!];
  const part = (current - i0) / (i1 - i0);
  return voltages[upper - 1]! + part * (voltages[upper]! - voltages[upper - 1]!);
}

/** A falling line as seen behind a resistance that its own current passes [ohm]. */
export function behind({ currents, voltages }: FallingLine, resistance: number): FallingLine {
  return { currents, voltages: voltages.map((voltage, i) => voltage - currents[i]! * resistance) };
}
