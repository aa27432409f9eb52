import type { LogLevels } from './levels.ts';

/** States of the arc: nothing is on, voltage without current, electrode on the plate, arc burning. */
export const OFF = 0;
export const OPEN = 1;
export const SHORT = 2;
export const ARC = 3;
export type ArcStateCode = typeof OFF | typeof OPEN | typeof SHORT | typeof ARC;

/**
 * Levels between the states; each pair is a hysteresis, so that noise on a level does not make states. Shares of the
 * arc's current and voltage: judgement, no source; a short of a gouging electrode leaves the volts of leads and
 * joints, well under half of the arc's.
 */
export interface StateLevels {
  readonly currentOn: number;
  readonly currentOff: number;
  readonly shortBelow: number;
  readonly shortUntil: number;
  readonly openAbove: number;
  readonly openUntil: number;
  /** Below it nothing is on, where voltage is all that there is [V]. */
  readonly offBelow: number;
}

const NO_CURRENT = 100;
const NO_VOLTAGE = 40;

/** The levels between states from those of the log. */
export function stateLevels({ current = NO_CURRENT, voltage = NO_VOLTAGE, noLoad }: LogLevels): StateLevels {
  const above = noLoad ?? 1.5 * voltage;
  return {
    currentOn: 0.5 * current,
    currentOff: 0.25 * current,
    shortBelow: 0.45 * voltage,
    shortUntil: 0.55 * voltage,
    openAbove: voltage + 0.65 * (above - voltage),
    openUntil: voltage + 0.5 * (above - voltage),
    offBelow: 0.1 * voltage,
  };
}

/** The state after a row; NaN where the log has no such reading or the cell could not be read. */
export function nextState(
  state: ArcStateCode,
  volts: number,
  amps: number,
  levels: StateLevels,
): ArcStateCode {
  const hasVolts = !Number.isNaN(volts);
  if (!Number.isNaN(amps)) {
    const on = amps >= (state >= SHORT ? levels.currentOff : levels.currentOn);
    if (!on) return hasVolts && volts > levels.shortBelow ? OPEN : OFF;
    if (!hasVolts) return state === SHORT ? SHORT : ARC;
    return volts < (state === SHORT ? levels.shortUntil : levels.shortBelow) ? SHORT : ARC;
  }
  if (!hasVolts) return state;
  if (volts < levels.offBelow) return OFF;
  if (volts < (state === SHORT ? levels.shortUntil : levels.shortBelow)) return SHORT;
  return volts > (state === OPEN ? levels.openUntil : levels.openAbove) ? OPEN : ARC;
}
