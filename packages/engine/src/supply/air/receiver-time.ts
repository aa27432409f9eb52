import { airDensity } from './air-state.ts';

/**
 * Volume of a receiver that bridges a shortage of delivery for a time.
 *
 * V = t (Qout - Qin) pa / (p1 - p2), isothermal, with free air at `reference` and the receiver's temperature.
 *
 * @param time - time to bridge [s], > 0
 * @param shortage - free air taken less free air delivered [m3/s], > 0
 * @param reference - absolute pressure of the free air [Pa abs], > 0
 * @param fall - pressure the receiver may lose [Pa], > 0
 * @returns volume [m3]
 * @source receiver sizing example, confirmed: 183.75 ft3
 * @example
 * receiverVolume(60, 0.01, 100000, 100000) // => 0.6
 */
export function receiverVolume(time: number, shortage: number, reference: number, fall: number): number {
  return (time * shortage * reference) / fall;
}

/**
 * Time for which a receiver bridges a shortage of delivery.
 *
 * t = V (p1 - p2) / (pa (Qout - Qin)), isothermal; endless where there is no shortage.
 *
 * @param volume - volume of the receiver [m3], > 0
 * @param shortage - free air taken less free air delivered [m3/s], any
 * @param reference - absolute pressure of the free air [Pa abs], > 0
 * @param fall - pressure the receiver may lose [Pa], >= 0
 * @returns time [s]
 * @source derived
 * @example
 * receiverTime(0.5, 0.0094, 100000, 110000) // => 58.5106383
 */
export function receiverTime(volume: number, shortage: number, reference: number, fall: number): number {
  return shortage <= 0 ? Number.POSITIVE_INFINITY : (volume * fall) / (reference * shortage);
}

/**
 * Mass that a receiver gives between two pressures.
 *
 * m = p1 V/(R T1) (1 - (p2/p1)^(1/n)); n = 1 for a slow draw, 1.4 for a fast one, which gives up to 27 % less.
 *
 * @param volume - volume of the receiver [m3], > 0
 * @param from - absolute pressure at the start [Pa abs], > to
 * @param to - absolute pressure at the end [Pa abs], > 0
 * @param temperature - temperature at the start [K], > 0
 * @param exponent - polytropic exponent [-], 1 to 1.4
 * @returns mass of air [kg]
 * @source textbook, derived
 * @example
 * receiverAir(0.5, 800000, 690000, 293.15, 1.2) // => 0.551267153
 */
export function receiverAir(
  volume: number,
  from: number,
  to: number,
  temperature: number,
  exponent: number,
): number {
  return airDensity(from, temperature) * volume * (1 - (to / from) ** (1 / exponent));
}
