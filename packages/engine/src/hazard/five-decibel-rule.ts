import type { NoiseTask } from './noise-task.ts';

/** Level that the 5 dB rule permits for eight hours [dBA]. */
const CRITERION = 90;
/** Rise that halves the time [dB]. */
const EXCHANGE = 5;
const EIGHT_HOURS = 8 * 3600;
/** 5 / log10(2) as the rule rounds it. */
const TWA_FACTOR = 16.61;

/** Level from which a spell counts towards the permissible exposure [dBA]. */
export const OSHA_PEL_THRESHOLD = 90;
/** Level from which a spell counts towards the action level [dBA]. */
export const OSHA_ACTION_THRESHOLD = 80;

/**
 * Time that the 5 dB rule sets against a level.
 *
 * T = 8 h / 2^((L - 90) / 5), unrounded; the published table rounds it and runs from 80 to 130 dBA.
 *
 * @param level - level at the ear [dBA], 80 to 130
 * @returns reference duration [s]
 * @source 29 CFR 1910.95 Appendix A, Table G-16A footnote (confirmed)
 * @example
 * oshaDuration(95) // => 14400
 */
export function oshaDuration(level: number): number {
  return EIGHT_HOURS / 2 ** ((level - CRITERION) / EXCHANGE);
}

/**
 * Noise dose of a shift by the 5 dB rule; 1 is the whole of what is permitted.
 *
 * D = sum(C / T) over the spells at or above the threshold: 90 dBA for the permissible exposure, 80 dBA for the
 * action level (the thresholds are from memory of 1910.95(c), (d)).
 *
 * @param tasks - spells of noise [list], levels 80 to 130 dBA
 * @param threshold - least level that counts [dBA], 90 or 80
 * @returns dose [-]
 * @source 29 CFR 1910.95(b), (d) and Appendix A (confirmed)
 * @example
 * oshaDose([{ level: 110, time: 5400 }, { level: 100, time: 3600 }, { level: 84, time: 19800 }], 90) // => 3.5
 */
export function oshaDose(tasks: readonly NoiseTask[], threshold: number): number {
  return tasks.reduce(
    (dose, { level, time }) => (level >= threshold ? dose + time / oshaDuration(level) : dose),
    0,
  );
}

/**
 * Eight-hour average level of a dose by the 5 dB rule.
 *
 * TWA = 16.61 log10(D) + 90.
 *
 * @param dose - dose, 1 for the whole of what is permitted [-], > 0
 * @returns average level [dBA]
 * @source 29 CFR 1910.95 Appendix A I(2) (confirmed)
 * @example
 * oshaAverage(3.5) // => 99.03697022
 */
export function oshaAverage(dose: number): number {
  return TWA_FACTOR * Math.log10(dose) + CRITERION;
}
