import type { Job } from '../job/index.ts';
import { metalOf } from '../material/index.ts';
import { publishedBelief, type RemovalBelief } from '../removal/index.ts';
import { conjugateBelief } from './conjugate-belief.ts';
import { depthDemand, runDemand } from './demand.ts';
import type { SolveTask } from './solve.ts';

/** The published belief for the metal and position of a job. */
export function posteriorOf(job: Job): RemovalBelief {
  return publishedBelief(metalOf(job.plate.material, job.plate.composition), job.seam.position);
}

/** A solver's task for the first electrode of a job's kit at a current, with one track. */
export function singleTrackTask(job: Job, current: number): SolveTask {
  const posterior = posteriorOf(job);
  const electrode = job.kit.electrodes[0]!;
  const voltage = job.kit.arc_voltage.set;
  const unitTravel = (voltage * current) / (electrode.diameter ** 2 * posterior.meltingEnergy);
  const pattern = { tracks: 1, spacing: 0 };
  return {
    base: { electrode, current, voltage, angleTerm: 0, unitTravel, pattern },
    pattern,
    belief: conjugateBelief(posterior).depth,
    energyRange: [Math.log(unitTravel / job.kit.travel.most), Math.log(unitTravel / job.kit.travel.least)],
    depth: depthDemand(job, 0),
    run: runDemand(job),
    ridge: 0,
    work: { left: Number.POSITIVE_INFINITY },
  };
}
