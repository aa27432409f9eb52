import { drawStream } from '../numeric/index.ts';
import type { CommissionCheck } from './check.ts';

/** Standard deviation of a made-up reading, and how far it goes at most, as shares of the way to the end of its band. */
const SPREAD = 0.3;
const MOST = 0.8;

/** A reading that was made up. */
export interface RehearsedReading {
  /** Identifier of the check. */
  readonly check: string;
  /** The reading in the unit of the check, or whether the check is met [unit of the check]. */
  readonly value: number | boolean;
}

/**
 * Makes up what is read at a rig that is in order, to show the checks with.
 *
 * Each reading lies inside its band, about the reading to expect; each check without a reading is met. The same seed gives
 * the same readings. They are no measurement and must be marked as invented wherever they are shown.
 *
 * @param checks - the checks [list], from commissionChecks
 * @param seed - the seed [-], a whole number from 0 to 2^31 - 1
 * @returns one made-up reading per check, in their order [list]
 * @source judgement, no source: a made-up rig
 * @example
 * rehearseReadings([{ id: 'polarity', kind: 'confirm' }], 1) // => [{"check":"polarity","value":true}]
 */
export function rehearseReadings(checks: readonly CommissionCheck[], seed: number): RehearsedReading[] {
  const stream = drawStream(seed);
  return checks.map((check) => {
    if (check.kind === 'confirm') return { check: check.id, value: true };
    const { expected, least, most } = check;
    const away = Math.min(MOST, Math.max(-MOST, SPREAD * stream.normal()));
    return { check: check.id, value: expected + away * (away < 0 ? expected - least : most - expected) };
  });
}
