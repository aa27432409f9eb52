import type { FloorShape } from '../groove/index.ts';
import { type Limit, limitOf, withSensitivity } from '../limit/index.ts';
import { percentiles } from '../numeric/index.ts';
import { mean } from './effort.ts';
import type { ReportInput } from './report-input.ts';
import type { Feasible } from './weigh.ts';

/**
 * Every limit of a plan, the tightest over its passes, with those of the wanted groove.
 * Typical: the electrodes that do for 90 of 100 shops [-].
 */
export function limitsOf(
  feasible: Feasible,
  input: ReportInput,
  typical: { readonly electrodes: number },
  shape: FloorShape,
): Limit[] {
  const { job, limits } = input;
  const { solved, candidates } = feasible;
  const { outcomes } = solved;
  const ofProcess = limits.flatMap((check) =>
    candidates
      .map((each) => withSensitivity(check, each, job))
      .reduce((worst, next) => worst.map((limit, index) => tighter(limit, next[index]!))),
  );
  const width = mean(outcomes.width.filter((_, shop) => outcomes.notRun[shop] === 0));
  const ligament = job.plate.thickness - percentiles(outcomes.deepest, [job.groove.ligament_assurance])[0]!;
  const wanted = { text: 'the job: wanted groove', provenance: 'job file' as const };
  const common = { source: wanted, hard: true };
  return [
    ...ofProcess,
    limitOf({
      ...common,
      id: 'ligament',
      title: 'Ligament kept, at the chance asked for',
      demand: ligament,
      capacity: job.groove.ligament_least,
      unit: 'mm',
      sense: 'least',
      remedy: 'a shallower groove, or a smaller least ligament',
    }),
    limitOf({
      ...common,
      id: 'root_radius',
      title: 'Root radius',
      demand: shape.rootRadius ?? 0,
      capacity: job.groove.root_radius_least,
      unit: 'mm',
      sense: 'least',
      remedy: 'a larger electrode',
    }),
    limitOf({
      ...common,
      id: 'width_least',
      title: 'Middle width at the surface, least',
      demand: width,
      capacity: job.groove.width.least,
      unit: 'mm',
      sense: 'least',
      remedy: 'a larger electrode, or more tracks',
    }),
    limitOf({
      ...common,
      id: 'width_most',
      title: 'Middle width at the surface, greatest',
      demand: width,
      capacity: job.groove.width.most,
      unit: 'mm',
      sense: 'most',
      remedy: 'a smaller electrode, or fewer tracks',
    }),
    limitOf({
      id: 'electrode_stock',
      title: 'Electrodes in stock, enough nine times in ten',
      demand: typical.electrodes,
      capacity: solved.setup.rig.electrode.count,
      unit: 'electrodes',
      sense: 'most',
      hard: true,
      source: { text: "the kit's stock", provenance: 'job file' },
      remedy: 'more electrodes of this size',
    }),
  ];
}

/** Of the same limit for two passes, the one with less room. */
function tighter(a: Limit, b: Limit): Limit {
  const room = (limit: Limit): number =>
    (limit.sense === 'most' ? limit.capacity - limit.demand : limit.demand - limit.capacity) /
    Math.max(Math.abs(limit.capacity), 1e-12);
  return room(b) < room(a) ? b : a;
}
