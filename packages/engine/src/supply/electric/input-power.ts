import type { PowerSource } from './power-source.ts';

/** What a source draws from the mains. Only what its plate's figures allow is given. */
export interface InputPower {
  /** Power drawn [W]. */
  readonly power_W: number;
  /** Apparent power, where the power factor is known [VA]. */
  readonly apparent_VA?: number;
  /** Current in each line, where the mains are known too [A]. */
  readonly line_current_A?: number;
}

/**
 * What a source draws from the mains for an output.
 *
 * P = output / efficiency; S = P / power factor; line current S / (sqrt(3) U) for three phases, S / U for one.
 *
 * @param source - efficiency, power factor and mains as far as known [record], a checked source
 * @param output - power at the terminals [W], >= 0
 * @returns power, apparent power and line current, or undefined without an efficiency [record]
 * @source textbook
 * @example
 * inputPower({ efficiency: 0.85, power_factor: 0.9, mains: { voltage: 400, phases: 3 } }, 44000).line_current_A // => 83.0176858
 */
export function inputPower(
  source: Pick<PowerSource, 'efficiency' | 'power_factor' | 'mains'>,
  output: number,
): InputPower | undefined {
  if (source.efficiency === undefined) return undefined;
  const power_W = output / source.efficiency;
  if (source.power_factor === undefined) return { power_W };
  const apparent_VA = power_W / source.power_factor;
  if (source.mains === undefined) return { power_W, apparent_VA };
  const lines = source.mains.phases === 3 ? Math.sqrt(3) : 1;
  return { power_W, apparent_VA, line_current_A: apparent_VA / (lines * source.mains.voltage) };
}

/**
 * Effective current of a supply line whose load comes and goes.
 *
 * sqrt(I1^2 X + I0^2 (1 - X)).
 *
 * @param loaded - line current under load [A], >= 0
 * @param idle - line current without load [A], >= 0
 * @param duty - share of the time under load [-], 0 to 1
 * @returns effective current [A]
 * @source IEC 60974-1 (memory)
 * @example
 * effectiveSupplyCurrent(83, 5, 0.6) // => 64.3692473
 */
export function effectiveSupplyCurrent(loaded: number, idle: number, duty: number): number {
  return Math.sqrt(loaded ** 2 * duty + idle ** 2 * (1 - duty));
}
