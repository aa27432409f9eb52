import type { DutyInterval } from '../duty/index.ts';

/** The period that power sources are rated over, IEC 60974-1 (confirmed) [s]. */
const PERIOD = 600;

/**
 * Most minutes of arc in any ten minutes of a duty.
 *
 * Sources are rated over ten minutes; a long cut is not averaged over an hour. (Welding-cable tables use five
 * minutes: not the same.)
 *
 * @param duty - arc on and off in turn [list], durations >= 0 s
 * @returns minutes of arc in the worst ten minutes [min]
 * @source ten-minute period of IEC 60974-1 (confirmed)
 * @example
 * arcMinutesInTen([{ arc: true, duration: 240 }, { arc: false, duration: 120 }, { arc: true, duration: 300 }]) // => 8
 */
export function arcMinutesInTen(duty: readonly DutyInterval[]): number {
  let worst = 0;
  // The worst window starts where an arc starts, or ends where one ends: try both ways round.
  for (const intervals of [duty, duty.toReversed()]) {
    for (const [start, first] of intervals.entries()) {
      if (!first.arc) continue;
      let left = PERIOD;
      let arc = 0;
      for (let i = start; i < intervals.length && left > 0; i += 1) {
        const part = Math.min(left, intervals[i]!.duration);
        if (intervals[i]!.arc) arc += part;
        left -= part;
      }
      worst = Math.max(worst, arc);
      if (worst >= PERIOD) return 10;
    }
  }
  return worst / 60;
}

/**
 * Factor on a cable's continuous current when the arc burns for a share of each period only.
 *
 * sqrt((1 - exp(-T/tau)) / (1 - exp(-X T/tau))). The quick rule 1/sqrt(X) is its limit for periods much shorter
 * than the time constant, and is too hopeful elsewhere.
 *
 * @param share - share of the period with arc [-], above 0, <= 1
 * @param period - period [s], > 0
 * @param timeConstant - time constant of the cable [s], > 0
 * @returns factor on the current [-]
 * @source derived
 * @example
 * cableDutyFactor(0.35, 300, 520.5) // => 1.54852892
 */
export function cableDutyFactor(share: number, period: number, timeConstant: number): number {
  return Math.sqrt(Math.expm1(-period / timeConstant) / Math.expm1((-share * period) / timeConstant));
}
