import fc from 'fast-check';
import type { PlanOutcome } from './outcome.ts';
import { planOf } from './plan-of.test-support.ts';
import { type TestJobChange, testJob } from './test-job.test-support.ts';

/** What of a job may be eased. */
export type Freedom =
  | 'tolerance_above'
  | 'tolerance_below'
  | 'width'
  | 'assurance'
  | 'electrode'
  | 'current'
  | 'stations'
  | 'layers'
  | 'tracks';

/** A small job with gauging and trials allowed, by the figures that may be eased. */
export interface FreeJob {
  readonly length_mm: number;
  readonly depth_mm: number;
  readonly plus_mm: number;
  readonly minus_mm: number;
  readonly width_most_mm: number;
  readonly assurance_percent: number;
  /** Diameters [in eighths of an inch]. */
  readonly electrodes: readonly number[];
  readonly current_most_A: number;
  readonly stations_most: number;
  readonly layers_most: number;
  readonly tracks_most: number;
  readonly objective: 'time' | 'cost';
}

const tenths = (least: number, most: number) =>
  fc.noBias(fc.integer({ min: 10 * least, max: 10 * most })).map((value) => value / 10);
const whole = (min: number, max: number) => fc.noBias(fc.integer({ min, max }));

/** Small jobs of all kinds. */
export const freeJobs: fc.Arbitrary<FreeJob> = fc.record({
  length_mm: whole(400, 4000),
  depth_mm: tenths(5, 14),
  plus_mm: tenths(1.5, 6),
  minus_mm: tenths(0.3, 2),
  width_most_mm: whole(18, 34),
  assurance_percent: whole(85, 98),
  electrodes: fc.uniqueArray(whole(2, 5), { minLength: 1, maxLength: 2 }),
  current_most_A: whole(500, 1100),
  stations_most: whole(1, 8),
  layers_most: whole(1, 3),
  tracks_most: whole(1, 3),
  objective: fc.constantFrom('time', 'cost'),
});

/** The same job with more of one freedom. */
export function eased(job: FreeJob, freedom: Freedom): FreeJob {
  switch (freedom) {
    case 'tolerance_above':
      return { ...job, plus_mm: job.plus_mm + 2 };
    case 'tolerance_below':
      return { ...job, minus_mm: job.minus_mm + 0.5 };
    case 'width':
      return { ...job, width_most_mm: job.width_most_mm + 6 };
    case 'assurance':
      return { ...job, assurance_percent: job.assurance_percent - 5 };
    case 'electrode':
      return { ...job, electrodes: [...new Set([...job.electrodes, 3, 4])] };
    case 'current':
      return { ...job, current_most_A: job.current_most_A + 150 };
    case 'stations':
      return { ...job, stations_most: job.stations_most + 4 };
    case 'layers':
      return { ...job, layers_most: job.layers_most + 1 };
    case 'tracks':
      return { ...job, tracks_most: job.tracks_most + 1 };
  }
}

/** Its changes to the test job. */
function documentOf(job: FreeJob): TestJobChange {
  return {
    seam: { length: `${job.length_mm} mm` },
    plate: { thickness: '40 mm' },
    groove: {
      depth: { wanted: `${job.depth_mm} mm`, plus: `${job.plus_mm} mm`, minus: `${job.minus_mm} mm` },
      width: { least: '6 mm', most: `${job.width_most_mm} mm` },
      assurance: `${job.assurance_percent} %`,
    },
    kit: {
      electrodes: job.electrodes.map((eighths) => ({
        ...{ diameter: `${eighths}/8 in`, count: 200, price_each: 2 + eighths },
      })),
      current: { least: '150 A', most: `${job.current_most_A} A` },
      gauge: { stations_most: job.stations_most },
    },
    plan: { layers_most: job.layers_most, tracks_most: job.tracks_most, objective: job.objective },
  };
}

/** The least objective that is told of a job: of plans that cost nearly the same the quickest is the plan; endless where none holds [s or currency]. */
export function meritOf(job: FreeJob): number {
  const result = planOf(testJob(documentOf(job)).job);
  if ('refusal' in result) return Number.POSITIVE_INFINITY;
  const by = ({ jobTime, wholeCost }: PlanOutcome): number =>
    job.objective === 'time' ? jobTime.mean : wholeCost.mean;
  return Math.min(...[result.plan, ...result.alternatives].map(by));
}
