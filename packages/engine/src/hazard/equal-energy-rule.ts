import type { NoiseTask } from './noise-task.ts';

/** Level that the 3 dB rules set against eight hours [dBA]. */
const CRITERION = 85;
/** Rise that halves the time [dB]. */
const EXCHANGE = 3;
const EIGHT_HOURS = 8 * 3600;

/**
 * Time that NIOSH sets against a level, by the 3 dB rule.
 *
 * T = 480 min / 2^((L - 85) / 3).
 *
 * @param level - level at the ear [dBA], 80 to 140
 * @returns allowed time [s]
 * @source NIOSH Publication 98-126 (confirmed)
 * @example
 * nioshDuration(100) / 60 // => 15
 */
export function nioshDuration(level: number): number {
  return EIGHT_HOURS / 2 ** ((level - CRITERION) / EXCHANGE);
}

/**
 * Noise dose of a shift by NIOSH; 1 is the whole of what is recommended.
 *
 * D = sum(C / T); every spell counts here, quiet ones add next to nothing.
 *
 * @param tasks - spells of noise [list], levels 0 to 140 dBA
 * @returns dose [-]
 * @source NIOSH Publication 98-126 (confirmed)
 * @example
 * nioshDose([{ level: 110, time: 5400 }, { level: 100, time: 3600 }, { level: 84, time: 19800 }]) // => 65.02187951
 */
export function nioshDose(tasks: readonly NoiseTask[]): number {
  return tasks.reduce((dose, { level, time }) => dose + time / nioshDuration(level), 0);
}

/**
 * Eight-hour average level of a NIOSH dose.
 *
 * TWA = 10 log10(D) + 85.
 *
 * @param dose - dose, 1 for the whole of what is recommended [-], > 0
 * @returns average level [dBA]
 * @source NIOSH criteria document, footnote (confirmed)
 * @example
 * nioshAverage(65.02187951) // => 103.1305952
 */
export function nioshAverage(dose: number): number {
  return 10 * Math.log10(dose) + CRITERION;
}

/**
 * Daily noise exposure level of a shift, brought to eight hours.
 *
 * L_EX,8h = 10 log10(sum(T 10^(L/10)) / 8 h): equal energy, as EU law and ISO 9612 count.
 *
 * @param tasks - spells of noise [list], not empty, times not all 0
 * @returns exposure level [dBA]
 * @source ISO 9612:2009; Directive 2003/10/EC (memory)
 * @example
 * dailyExposureLevel([{ level: 110, time: 5400 }, { level: 100, time: 3600 }, { level: 84, time: 19800 }]) // => 103.0476386
 */
export function dailyExposureLevel(tasks: readonly NoiseTask[]): number {
  const energy = tasks.reduce((sum, { level, time }) => sum + time * 10 ** (level / 10), 0);
  return 10 * Math.log10(energy / EIGHT_HOURS);
}
