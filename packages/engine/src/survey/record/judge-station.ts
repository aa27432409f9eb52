import type { Job } from '../../job/index.ts';
import type { Verdict } from '../../limit/index.ts';
import { formatAmount, type UnitSystem } from '../../quantity/index.ts';
import type { Readings } from './readings-schema.ts';

/** What was gauged at one place. */
export type Station = NonNullable<Readings['stations']>[number];

/** What the readings at one place say of the groove. */
export interface StationJudgement {
  /** Null for a place beyond the seam, which is not judged. */
  readonly verdict: Verdict | null;
  /** What is not as wanted, or near to it; empty where everything holds clearly. */
  readonly words: readonly string[];
}

/** One value against one end of what is accepted. */
interface Held {
  readonly name: string;
  readonly value: number | undefined;
  readonly end: number;
  readonly sense: 'least' | 'most';
}

/**
 * Holds the readings at one place against the groove that the job asks for.
 *
 * A value outside what is accepted fails; one that lies inside by no more than the standard uncertainty of one
 * gauge reading is tight, since the next reading might say otherwise. A person decides; this is arithmetic.
 *
 * @param station - place, depth and, where they were taken, width and root radius [record], one station of a readings file
 * @param job - the job that the groove was made for [record], from `readJob`
 * @param system - units of the words [text], inch or metric
 * @param u - standard uncertainty of one reading [m], above 0; left out: the spread that the job states for its gauge
 * @returns verdict and words [record]
 * @source geometry
 * @example
 * const groove = { depth: { wanted: 0.012, plus: 0.006, minus: 0 }, width: { least: 0.014, most: 0.022 }, root_radius_least: 0.006, ligament_least: 0.01 };
 * const job = { seam: { length: 6 }, plate: { thickness: 0.032 }, groove, kit: { gauge: { reading_sd: 0.0004 } } };
 * judgeStation({ at: 1, depth: 0.0115 }, job, 'metric') // => {"verdict":"fails","words":["depth 11.5 mm, at least 12.0 mm wanted"]}
 */
export function judgeStation(
  station: Station,
  job: Job,
  system: UnitSystem,
  u: number = job.kit.gauge.reading_sd,
): StationJudgement {
  const length = (value: number): string => formatAmount(value, 'reading', system);
  if (station.at > job.seam.length * (1 + 1e-9)) {
    return {
      verdict: null,
      words: [
        `${formatAmount(station.at, 'length', system)} is beyond the end of the seam at ${formatAmount(job.seam.length, 'length', system)}`,
      ],
    };
  }
  const { groove, plate } = job;
  const { wanted, plus, minus } = groove.depth;
  const held: readonly Held[] = [
    { name: 'depth', value: station.depth, end: wanted - minus, sense: 'least' },
    { name: 'depth', value: station.depth, end: wanted + plus, sense: 'most' },
    {
      name: 'plate left',
      value: plate.thickness - station.depth,
      end: groove.ligament_least,
      sense: 'least',
    },
    { name: 'width', value: station.width, end: groove.width.least, sense: 'least' },
    { name: 'width', value: station.width, end: groove.width.most, sense: 'most' },
    { name: 'root radius', value: station.root_radius, end: groove.root_radius_least, sense: 'least' },
  ];
  const words: string[] = [];
  let verdict: Verdict = 'holds';
  for (const { name, value, end, sense } of held) {
    if (value === undefined || (sense === 'least' && end === 0)) continue;
    const spare = sense === 'least' ? value - end : end - value;
    // readings and limits come through different sums; a billionth of a metre is no finding
    if (spare < -1e-9) {
      verdict = 'fails';
      words.push(`${name} ${length(value)}, at ${sense} ${length(end)} wanted`);
    } else if (spare <= u) {
      if (verdict !== 'fails') verdict = 'tight';
      words.push(
        `${name} ${length(value)} is near the ${sense === 'least' ? 'least' : 'greatest'}, ${length(end)}`,
      );
    }
  }
  return { verdict, words };
}
