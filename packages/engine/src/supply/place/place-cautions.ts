import type { Bay, BayPoint } from './bay.ts';
import { inJet } from './jet.ts';
import { distanceOf } from './plane.ts';
import { runsBeside } from './seam-band.ts';

/** Distance between the points of a way or an edge that are looked at [m]. */
const STEP = 0.25;

/** A lead or hose as it lies. */
interface LaidWay {
  readonly name: string;
  readonly way: readonly BayPoint[];
}

/**
 * What stands or lies where the jet throws, and leads that run beside the seam, in words.
 *
 * The torch's own lead and hose follow the carriage behind its jet and are left out of the first.
 *
 * @param bay - the bay with its seam, jet and what stands in it [record], see Bay
 * @param ways - leads and hoses as they lie, by name [list], any
 * @returns cautions [list]
 * @source judgement, no source: as inJet, and the distance that the bay states
 * @example
 * const bay = { outline: [], obstacles: [], walkways: [], powerSource: { x: -9, y: 0 }, airDrop: { x: -9, y: 1 }, workpiece: { id: 'plate', corners: [] }, seam: [{ x: 0, y: 0 }, { x: 6, y: 0 }], workClamp: { x: 7, y: 0 }, keepOut: 2, clearance: 0.5, jet: { ahead: 20, bothWays: false } };
 * placeCautions(bay, [])[0].slice(0, 46) // => "The work clamp stands where the jet throws: me"
 */
export function placeCautions(bay: Bay, ways: readonly LaidWay[]): readonly string[] {
  const { jet, seam, workClamp, leadClearance = 0 } = bay;
  const thrown = (point: BayPoint): boolean => jet !== undefined && inJet(point, seam, jet);
  const posts = [
    { name: 'power source', at: bay.powerSource },
    { name: 'air drop', at: bay.airDrop },
  ].filter(({ at }) => thrown(at));
  const walked = bay.walkways.filter(({ corners }) => along([...corners, corners[0]!]).some(thrown));
  // The torch's own lead and hose follow the carriage, behind its jet.
  const laid = ways.filter(({ name, way }) => !name.endsWith('to seam') && along(way).some(thrown));
  const beside = ways.filter(({ way }) => runsBeside(way, seam, leadClearance));
  return [
    ...(workClamp !== undefined && thrown(workClamp)
      ? [
          'The work clamp stands where the jet throws: melt lands on clamp, lug and lead. Clamp behind the start of the seam or beside it.',
        ]
      : []),
    ...posts.map(
      ({ name }) => `The ${name} stands where the jet throws: screen it off, or run the seam the other way.`,
    ),
    ...walked.map(({ id }) => `“${id}” lies where the jet throws: close it off while the arc burns.`),
    ...laid.map(({ name }) => `The run ${name} lies where the jet throws: cover it, or lay it another way.`),
    ...beside.map(
      ({ name }) =>
        `The run ${name} lies beside the seam: spatter reaches it and its field blows the arc aside. Make room, so that it crosses at right angles.`,
    ),
  ];
}

/** Points along a way, its corners among them. */
function along(way: readonly BayPoint[]): readonly BayPoint[] {
  return way.flatMap((to, i) => {
    const from = way[i - 1];
    if (from === undefined) return [to];
    const parts = Math.max(1, Math.ceil(distanceOf(from, to) / STEP));
    return Array.from({ length: parts }, (_, k) => ({
      x: from.x + ((to.x - from.x) * (k + 1)) / parts,
      y: from.y + ((to.y - from.y) * (k + 1)) / parts,
    }));
  });
}
