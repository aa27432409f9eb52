import type { DepthLaw } from './law.ts';
import { type SeamPaths, stationVariance } from './seam-paths.ts';
import type { Rig, Way } from './way.ts';

/** What the tables of a plan are made for. */
export interface TableTask {
  readonly law: DepthLaw;
  readonly rig: Rig;
  readonly way: Way;
  /** Length of the seam with its run-outs [m]. */
  readonly passLength: number;
  /** Standard deviation of one gauge reading [m]. */
  readonly readingSd: number;
  /** Depth that the tracks' centre lines must have and may have [m]. */
  readonly required: number;
  readonly most: number;
  /** Chance wanted for reaching the one and for not exceeding the other [-]. */
  readonly assurance: number;
  /** Median nominal width of one pass [m]. */
  readonly passWidth: number;
  /** Courses of the process along a length. */
  readonly paths: (length: number) => SeamPaths;
}

/** How many times the misses that a job allows on the whole one row of a table may have [-] (judgement): others have fewer. */
const ROW_MISSES = 2;

/** Chance that a row must hold each side of the tolerance with, for a pass to be run by it: below, the hand asks [-]. */
export function rowAssurance(assurance: number): number {
  return 1 - ROW_MISSES * (1 - assurance);
}

/** ln specific energy at which the middle of the law cuts this deep, held in the range of the travel. */
export function energyForCut(law: DepthLaw, rig: Rig, cut: number): number {
  const [level, slope, angle] = law.mean;
  return (Math.log(cut / rig.electrode.diameter) - level - angle * rig.angleTerm) / slope;
}

/** Holds an energy in the range that the travel allows. */
export function heldEnergy({ energyRange: [low, high] }: Rig, energy: number): number {
  return Math.min(high, Math.max(low, energy));
}

/** Variance of ln of a reading about what is common to the job, with the row that it is filed under. */
export function readingVariance(
  task: Pick<TableTask, 'law' | 'readingSd'>,
  stretch: { readonly length: number; readonly stations: number },
  depth: number,
): number {
  const { law, readingSd } = task;
  const { pass, seam } = law.levels;
  return (
    pass ** 2 +
    seam ** 2 * stationVariance(stretch.length, stretch.stations, law.seamRange) +
    (readingSd / depth) ** 2 / stretch.stations
  );
}
