/** Tracks side by side, even and centred on the groove's centre line. */
export interface Pattern {
  /** Tracks side by side [-]. */
  readonly tracks: number;
  /** Distance between neighbouring tracks; 0 for one track [m]. */
  readonly spacing: number;
}

/** Offset of a track from the centre line [m]; tracks count from 0. */
export function trackOffset(pattern: Pattern, track: number): number {
  return (track - (pattern.tracks - 1) / 2) * pattern.spacing;
}

/** What the groove asks of a pattern. */
export interface PatternWish {
  /** Median nominal width of one pass [m]. */
  readonly passWidth: number;
  /** Median width at the surface that one track of the wanted depth leaves [m]. */
  readonly surfaceWidth: number;
  /** Least width at the surface [m]. */
  readonly widthLeast: number;
  /** Greatest width at the surface [m]. */
  readonly widthMost: number;
  readonly tracksMost: number;
  /** Number of tracks the user has locked. */
  readonly tracksLocked: number | undefined;
  /** Track spacing the user has locked [m]. */
  readonly spacingLocked: number | undefined;
}

/** Closest and widest spacing worth trying, in pass widths [-]; wider leaves ridges, closer digs twice. */
const SPACING_RANGE = [0.3, 0.9] as const;
/** Spacings tried for one number of tracks [-]. */
const SPACINGS = 3;

/** Part of the width band, at either end, that the median width of several tracks keeps clear of [-]. */
const BAND_MARGIN = 0.2;

/** Patterns whose median width lies in the wanted band. */
export function patternsFor(wish: PatternWish): Pattern[] {
  const margin = BAND_MARGIN * (wish.widthMost - wish.widthLeast);
  const patterns: Pattern[] = [];
  const most = wish.tracksLocked ?? wish.tracksMost;
  for (let tracks = wish.tracksLocked ?? 1; tracks <= most; tracks += 1) {
    if (tracks === 1) {
      if (wish.surfaceWidth >= wish.widthLeast && wish.surfaceWidth <= wish.widthMost) {
        patterns.push({ tracks, spacing: 0 });
      }
      continue;
    }
    const gaps = tracks - 1;
    const closest = Math.max(
      SPACING_RANGE[0] * wish.passWidth,
      (wish.widthLeast + margin - wish.surfaceWidth) / gaps,
    );
    const widest = Math.min(
      SPACING_RANGE[1] * wish.passWidth,
      (wish.widthMost - margin - wish.surfaceWidth) / gaps,
    );
    if (wish.spacingLocked !== undefined) {
      const width = wish.surfaceWidth + gaps * wish.spacingLocked;
      if (width >= wish.widthLeast && width <= wish.widthMost)
        patterns.push({ tracks, spacing: wish.spacingLocked });
    } else if (closest <= widest) {
      for (let step = 0; step < SPACINGS; step += 1) {
        patterns.push({ tracks, spacing: closest + ((widest - closest) * step) / (SPACINGS - 1) });
      }
    }
  }
  return patterns;
}
