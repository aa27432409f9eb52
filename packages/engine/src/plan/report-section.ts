import { cutPass, type Floor, flatFloor, measureFloor } from '../groove/index.ts';
import { inUnit } from '../quantity/index.ts';
import { candidateOf } from './candidate-of.ts';
import { trackOffset } from './pattern.ts';
import type { SectionBand } from './result.ts';
import type { Feasible } from './weigh.ts';

/** Grid step of the drawn and measured section [m]. */
const SECTION_STEP = 0.1e-3;
/** Points of the section handed out [-]. */
const SECTION_POINTS = 161;

/** Sections with these deepest points, on a grid that holds the widest. */
export function bandFloors(
  feasible: Feasible,
  typical: readonly number[],
  [p05, p50, p95]: readonly [number, number, number],
  widest: number,
): { p05: Floor; p50: Floor; p95: Floor } {
  const at = (deepest: number): Floor => floorOfDepth(feasible, typical, deepest, widest);
  return { p05: at(p05), p50: at(p50), p95: at(p95) };
}

/** A section with this deepest point, each layer and track scaled alike: the same tracks, drawn shallower or deeper. */
function floorOfDepth(feasible: Feasible, typical: readonly number[], wanted: number, widest: number): Floor {
  const { task, solved, candidate } = feasible;
  const { pattern } = solved.setup;
  const halfWidth = widest / 2 + candidate.passWidth / 2;
  const cuts = typical
    .filter((energy) => !Number.isNaN(energy))
    .map((energy) => candidateOf(task, solved, energy, 0).passDepth);
  const gouged = (scale: number): Floor =>
    cuts.reduce(
      (floor, depth) => {
        let next = floor;
        for (let track = 0; track < pattern.tracks; track += 1) {
          next = cutPass(next, {
            offset: trackOffset(pattern, track),
            width: candidate.passWidth,
            depth: depth * scale,
          });
        }
        return next;
      },
      flatFloor(halfWidth, SECTION_STEP),
    );
  // Neighbouring tracks deepen each other a little, so the scale is corrected once from what came out.
  const first = wanted / cuts.reduce((sum, depth) => sum + depth, 0);
  const came = measureFloor(gouged(first)).deepest;
  return gouged(came > 0 ? (first * wanted) / came : first);
}

/** The floors as lists for the drawing. */
export function sectionBand(floors: { p05: Floor; p50: Floor; p95: Floor }): SectionBand {
  const { first, step, depth } = floors.p50;
  const span = (depth.length - 1) * step;
  const offsets = Array.from(
    { length: SECTION_POINTS },
    (_, index) => first + (span * index) / (SECTION_POINTS - 1),
  );
  const read = (floor: Floor): number[] =>
    offsets.map((offset) =>
      inUnit(floor.depth[Math.min(depth.length - 1, Math.round((offset - first) / step))]!, 'mm'),
    );
  return {
    offset_mm: offsets.map((offset) => inUnit(offset, 'mm')),
    depth_p05_mm: read(floors.p05),
    depth_p50_mm: read(floors.p50),
    depth_p95_mm: read(floors.p95),
  };
}
