import type { BayJet, BayPoint } from './bay.ts';

/** Half the angle into which the jet spreads; judgement, no source [rad]. */
const JET_HALF_ANGLE = (20 * Math.PI) / 180;

/**
 * Whether a point lies where the jet of a torch somewhere on the seam throws.
 *
 * From every point of a stretch the jet goes ahead along the travel and spreads by 20 deg to either side (judgement, no
 * source); all that lies nearer than its reach in that cone is in it.
 *
 * @param point - the point [m], any
 * @param seam - corners of the seam in the order of travel [list], at least one
 * @param jet - reach ahead [m] and whether both ways are run [record], reach >= 0
 * @returns whether it lies in the jet
 * @source geometry; angle: judgement, no source
 * @example
 * const seam = [{ x: 0, y: 0 }, { x: 6, y: 0 }];
 * inJet({ x: 9, y: 1 }, seam, { ahead: 20, bothWays: false }) // => true
 * inJet({ x: -3, y: 0 }, seam, { ahead: 20, bothWays: false }) // => false
 */
export function inJet(point: BayPoint, seam: readonly BayPoint[], jet: BayJet): boolean {
  return seam.slice(1).some((end, i) => {
    const start = seam[i]!;
    return thrownAt(point, start, end, jet.ahead) || (jet.bothWays && thrownAt(point, end, start, jet.ahead));
  });
}

function thrownAt(point: BayPoint, start: BayPoint, end: BayPoint, ahead: number): boolean {
  const length = Math.hypot(end.x - start.x, end.y - start.y);
  if (length === 0) return false;
  const along = { x: (end.x - start.x) / length, y: (end.y - start.y) / length };
  const forward = (point.x - start.x) * along.x + (point.y - start.y) * along.y;
  const aside = Math.abs((point.x - start.x) * along.y - (point.y - start.y) * along.x);
  // The place on the stretch from which the point is nearest while it still lies in the cone.
  const from = Math.min(length, forward - aside / Math.tan(JET_HALF_ANGLE));
  return from >= 0 && Math.hypot(forward - from, aside) <= ahead;
}

/**
 * Outlines of where the jet throws, one for each stretch and way, for a drawing.
 *
 * Each is the cone from the start of the stretch to the arc around its end, the arc in straight pieces.
 *
 * @param seam - corners of the seam in the order of travel [list], at least one
 * @param jet - reach ahead [m] and whether both ways are run [record], reach >= 0
 * @returns outlines [list]
 * @source geometry, as inJet
 * @example
 * Math.max(...jetOutlines([{ x: 0, y: 0 }, { x: 6, y: 0 }], { ahead: 20, bothWays: false })[0].map(({ x }) => x)) // => 26
 */
export function jetOutlines(
  seam: readonly BayPoint[],
  { ahead, bothWays }: BayJet,
): readonly (readonly BayPoint[])[] {
  return seam.slice(1).flatMap((end, i) => {
    const start = seam[i]!;
    return [lobe(start, end, ahead), ...(bothWays ? [lobe(end, start, ahead)] : [])];
  });
}

/** Straight parts of the arc at the far end of a lobe. */
const ARC_PARTS = 12;

function lobe(start: BayPoint, end: BayPoint, ahead: number): readonly BayPoint[] {
  const turn = Math.atan2(end.y - start.y, end.x - start.x);
  const thrown = (from: BayPoint, part: number): BayPoint => {
    const angle = turn + JET_HALF_ANGLE * part;
    return { x: from.x + ahead * Math.cos(angle), y: from.y + ahead * Math.sin(angle) };
  };
  const arc = Array.from({ length: ARC_PARTS + 1 }, (_, i) => thrown(end, (2 * i) / ARC_PARTS - 1));
  return [start, thrown(start, -1), ...arc, thrown(start, 1)];
}
