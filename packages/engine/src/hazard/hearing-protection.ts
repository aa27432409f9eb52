/** What is worn against noise, with its rating; null where the rating is not known. */
export interface HearingProtection {
  /** Rating of the plug [dB]; null where none is worn. */
  readonly plug: number | null;
  /** Whether it is a formable plug. */
  readonly formable: boolean;
  /** Rating of the muff [dB]; null where none is worn. */
  readonly muff: number | null;
}

/** How much of a rating is counted on. */
export type Derating = 'rated' | 'half' | 'niosh';

/** What the rating of a protector loses between C- and A-weighted noise [dB]. */
const WEIGHTING = 7;
/** What a muff over a plug adds to the better of the two [dB]. */
const SECOND_PROTECTOR = 5;
/** Shares of the rating that NIOSH counts on [-]. */
const NIOSH_SHARE = { muff: 0.75, formable: 0.5, other: 0.3 } as const;

/**
 * How much hearing protection takes off an A-weighted level.
 *
 * One protector: NRR - 7 (rated), (NRR - 7) / 2 (half), f NRR - 7 (NIOSH, f = 0.75 muff, 0.50 formable plug, 0.30
 * other plug), never below 0. A muff over a plug adds 5 dB to the better of the two, never the sum of both.
 *
 * @param protection - what is worn [record], ratings >= 0
 * @param derating - how much of the rating is counted on [text], rated, half or niosh
 * @returns attenuation [dB], or null where nothing is worn
 * @source 29 CFR 1910.95 App B; OSHA Technical Manual; NIOSH 98-126 (confirmed)
 * @example
 * hearingAttenuation({ plug: 29, formable: true, muff: 25 }, 'half') // => 16
 */
export function hearingAttenuation(protection: HearingProtection, derating: Derating): number | null {
  const { plug, muff, formable } = protection;
  const single = [
    ...(plug === null ? [] : [attenuation(plug, formable ? 'formable' : 'other', derating)]),
    ...(muff === null ? [] : [attenuation(muff, 'muff', derating)]),
  ];
  if (single.length === 0) return null;
  const better = Math.max(...single);
  return single.length === 2 ? better + SECOND_PROTECTOR : better;
}

function attenuation(rating: number, kind: keyof typeof NIOSH_SHARE, derating: Derating): number {
  if (derating === 'niosh') return Math.max(0, NIOSH_SHARE[kind] * rating - WEIGHTING);
  return Math.max(0, (derating === 'half' ? 0.5 : 1) * (rating - WEIGHTING));
}
