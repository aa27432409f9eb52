import type { Job } from '../job/index.ts';
import { meritBy } from './effort.ts';
import { type Forecast, type ForecastTask, forecast } from './forecast.ts';
import { commonCovariance, type DepthLaw } from './law.ts';
import type { MeasuringWorth } from './outcome.ts';
import { stationVariance } from './seam-paths.ts';
import { energyForCut, heldEnergy } from './table-task.ts';
import { wayFamilies } from './ways.ts';
import type { Feasible } from './weigh.ts';

/** Room above, in ln depth, that a way must be forecast to have to be counted on [-]. */
const ROOM = 0.01;

/**
 * What measuring more, or better, is worth on this job: the forecast of the best way with it against the best without,
 * at the plan's own electrode and current, so that what the forecast leaves out stands on both sides.
 */
export function worthMeasuring({ forecast: task, solved }: Feasible): MeasuringWorth[] {
  const { job } = task;
  const layers = solved.setup.way.shares.length;
  const now = bestOf(task, layers);
  if (now === undefined) return [];
  const { gauge, trial } = job.kit;
  const withKit = (change: Partial<Job['kit']>): ForecastTask => ({
    ...task,
    job: { ...job, kit: { ...job.kit, ...change } },
  });
  const allowed = job.plan.gauge_stops === 'allowed' && job.locks.travel === undefined;
  const target = Math.exp(solved.logTarget);
  const options: [MeasuringWorth['what'], ForecastTask][] = [
    ...(allowed && trial.on === 'none'
      ? [
          ['trial', withKit({ trial: { ...trial, on: 'scrap' } })] satisfies [
            MeasuringWorth['what'],
            ForecastTask,
          ],
        ]
      : []),
    ['trial_known', { ...task, law: afterTrial(task, target) }],
  ];
  if (allowed) {
    options.push(
      ['station', withKit({ gauge: { ...gauge, stations_most: gauge.stations_most + 1 } })],
      [
        'finer_gauge',
        {
          ...withKit({ gauge: { ...gauge, reading_sd: gauge.reading_sd / 2 } }),
          readingSd: gauge.reading_sd / 2,
        },
      ],
    );
    if (trial.on !== 'none') {
      options.push(['longer_trial', withKit({ trial: { ...trial, length_most: 2 * trial.length_most } })]);
    }
  }
  return options.map(([what, changed]) => {
    const then = bestOf(changed, layers) ?? now;
    const better = meritBy(then.merit, job.plan.objective) <= meritBy(now.merit, job.plan.objective);
    const saved = (key: 'cost' | 'time'): number => (better ? now.merit[key] - then.merit[key] : 0);
    return { what, cost: saved('cost'), time: saved('time') };
  });
}

/** The best forecast among the ways of one rig with no more layers than the plan: what is known better never asks for more. */
function bestOf(task: ForecastTask, layersMost: number): Forecast | undefined {
  const { objective } = task.job.plan;
  let best: Forecast | undefined;
  for (const { ways } of wayFamilies(task.job, task.rig.pattern.tracks, task.passLength)) {
    if ((ways[0]?.shares.length ?? 0) > layersMost) continue;
    for (const way of ways) {
      const each = forecast(task, way);
      if (each.slack < ROOM || each.outOfRange !== 0) continue;
      if (best === undefined || meritBy(each.merit, objective) < meritBy(best.merit, objective)) best = each;
    }
  }
  return best;
}

/** The law as it is expected to be known once a trial of an earlier job is on record: family learned, this job not. */
function afterTrial(task: ForecastTask, target: number): DepthLaw {
  const { law, rig, readingSd } = task;
  const energy = heldEnergy(rig, energyForCut(law, rig, target));
  const x = [1, energy, rig.angleTerm];
  const pull = law.covariance.map((row) => row.reduce((sum, value, c) => sum + value * x[c]!, 0));
  const { job, pass, seam } = law.levels;
  const own =
    job ** 2 +
    pass ** 2 +
    seam ** 2 * stationVariance(TRIAL_LENGTH, TRIAL_STATIONS, law.seamRange) +
    (readingSd / target) ** 2 / TRIAL_STATIONS;
  const seen = commonCovariance(law, energy, energy, rig.angleTerm) - job ** 2 + own;
  return {
    ...law,
    covariance: law.covariance.map((row, r) => row.map((value, c) => value - (pull[r]! * pull[c]!) / seen)),
  };
}

/** The trial on record that is weighed [m, -]. */
const TRIAL_LENGTH = 0.3;
const TRIAL_STATIONS = 3;
