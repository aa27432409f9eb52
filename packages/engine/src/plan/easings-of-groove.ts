import type { Job } from '../job/index.ts';
import { downToNothing, type Easing, evenly, written } from '../limit/index.ts';
import { fromUnit, inUnit, readOffOf, type Sentence, say } from '../quantity/index.ts';

/** What turns set-ups away before their depth is solved. */
const BEFORE_DEPTH: ReadonlySet<string> = new Set(['width_most', 'width_least', 'root_radius']);

/** What the drawing may give way by, the least dangerous first: width, tolerance, assurance, and the ligament last. */
export function easingsOfGroove({ groove }: Job): Easing[] {
  const length = (
    constraint: string,
    now: number,
    steps: readonly number[],
    change: (value: number, job: Job) => Partial<Job['groove']>,
    words: (metres: number) => Sentence,
  ): Easing => ({
    constraint,
    beforeDepth: BEFORE_DEPTH.has(constraint),
    unit: 'mm',
    now: written(inUnit(now, 'mm')),
    steps,
    apply: (job, value) => ({ ...job, groove: { ...job.groove, ...change(fromUnit(value, 'mm'), job) } }),
    words: (value) => words(fromUnit(value, 'mm')),
  });
  const { depth, width } = groove;
  return [
    length(
      'width_most',
      width.most,
      evenly(inUnit(width.most, 'mm'), 1, 40),
      (most, job) => ({ width: { ...job.groove.width, most } }),
      (metres) => say`a groove up to ${readOffOf(metres, 'length', 'least')} wide`,
    ),
    length(
      'width_least',
      width.least,
      downToNothing(inUnit(width.least, 'mm')).slice(0, -1),
      (least, job) => ({ width: { ...job.groove.width, least } }),
      (metres) => say`a groove from ${readOffOf(metres, 'length', 'most')} wide on`,
    ),
    length(
      'root_radius',
      groove.root_radius_least,
      groove.root_radius_least > 0 ? downToNothing(inUnit(groove.root_radius_least, 'mm')) : [],
      (least) => ({ root_radius_least: least }),
      (metres) => say`a least root radius of ${readOffOf(metres, 'length', 'most')}`,
    ),
    length(
      'depth_plus',
      depth.plus,
      evenly(inUnit(depth.plus, 'mm'), 0.25, 100),
      (plus, job) => ({ depth: { ...job.groove.depth, plus } }),
      (metres) => say`a depth that may be exceeded by ${readOffOf(metres, 'length', 'least')}`,
    ),
    length(
      'depth_minus',
      depth.minus,
      evenly(inUnit(depth.minus, 'mm'), 0.25, Math.floor(inUnit(depth.wanted - depth.minus, 'mm') * 2.4)),
      (minus, job) => ({ depth: { ...job.groove.depth, minus } }),
      (metres) => say`a depth that may fall short by ${readOffOf(metres, 'length', 'least')}`,
    ),
    {
      constraint: 'assurance',
      unit: '%',
      now: written(inUnit(groove.assurance, '%')),
      steps: [99, 98, 97, 96, 95, 94, 92.5, 90, 87.5, 85, 80, 75, 70].filter(
        (value) => value < inUnit(groove.assurance, '%') - 1e-9,
      ),
      apply: (job, value) => ({ ...job, groove: { ...job.groove, assurance: fromUnit(value, '%') } }),
      words: (value) => `an assurance of ${value} %`,
    },
    length(
      'ligament_least',
      groove.ligament_least,
      downToNothing(inUnit(groove.ligament_least, 'mm')),
      (least) => ({ ligament_least: least }),
      (metres) => say`a least ligament of ${readOffOf(metres, 'length', 'most')}`,
    ),
  ];
}
