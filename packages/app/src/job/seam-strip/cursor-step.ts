/** Ends between which the cursor moves [m]. */
export interface CursorRange {
  readonly from: number;
  readonly to: number;
}

/** Where a key moves the cursor: arrows by a hundredth, page keys by a tenth, ends by Home and End. */
export function cursorAfterKey(key: string, place: number, range: CursorRange): number | undefined {
  const span = range.to - range.from;
  const kept = (wanted: number): number => Math.min(range.to, Math.max(range.from, wanted));
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return kept(place + span / 100);
    case 'ArrowLeft':
    case 'ArrowDown':
      return kept(place - span / 100);
    case 'PageUp':
      return kept(place + span / 10);
    case 'PageDown':
      return kept(place - span / 10);
    case 'Home':
      return range.from;
    case 'End':
      return range.to;
    default:
      return undefined;
  }
}
