import { cutPass, type Floor, flatFloor, measureFloor } from '../groove/index.ts';
import type { SectionOutcome } from './outcome.ts';
import { trackOffset } from './pattern.ts';
import type { Feasible } from './weigh.ts';

/** Grid step of the drawn and measured section [m]. */
const SECTION_STEP = 0.1e-3;
/** Points of the section handed out [-]. */
const SECTION_POINTS = 161;

/** Sections with these deepest points, on a grid that holds the widest. */
export function bandFloors(
  feasible: Feasible,
  [p05, p50, p95]: readonly [number, number, number],
  widest: number,
): { p05: Floor; p50: Floor; p95: Floor } {
  const at = (deepest: number): Floor => floorOfDepth(feasible, deepest, widest);
  return { p05: at(p05), p50: at(p50), p95: at(p95) };
}

/** A section with this deepest point, each layer and track scaled alike: the same tracks, drawn shallower or deeper. */
export function floorOfDepth({ solved, forecast }: Feasible, wanted: number, widest: number): Floor {
  const { pattern } = solved.setup.rig;
  const width = forecast.passWidth;
  const halfWidth = widest / 2 + width / 2;
  const gouged = (scale: number): Floor =>
    solved.setup.way.shares.reduce(
      (floor, share) => {
        let next = floor;
        for (let track = 0; track < pattern.tracks; track += 1) {
          next = cutPass(next, { offset: trackOffset(pattern, track), width, depth: share * wanted * scale });
        }
        return next;
      },
      flatFloor(halfWidth, SECTION_STEP),
    );
  // Neighbouring tracks deepen each other a little, so the scale is corrected once from what came out.
  const came = measureFloor(gouged(1)).deepest;
  return gouged(came > 0 ? wanted / came : 1);
}

/** The floors as lists for the drawing. */
export function sectionOutcome(floors: { p05: Floor; p50: Floor; p95: Floor }): SectionOutcome {
  const { first, step, depth } = floors.p50;
  const span = (depth.length - 1) * step;
  const offset = Array.from(
    { length: SECTION_POINTS },
    (_, index) => first + (span * index) / (SECTION_POINTS - 1),
  );
  const read = (floor: Floor): number[] =>
    offset.map((each) => floor.depth[Math.min(depth.length - 1, Math.round((each - first) / step))]!);
  return { offset, p05: read(floors.p05), p50: read(floors.p50), p95: read(floors.p95) };
}
