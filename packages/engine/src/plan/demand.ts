import { runOutLength } from '../groove/index.ts';
import type { Job } from '../job/index.ts';
import type { RemovalBelief } from '../removal/index.ts';
import type { DepthDemand } from './chance.ts';
import type { RunDemand } from './run-plan.ts';

/** What the groove asks; the guard is the part of the allowed misses that is kept back [-]. */
export function depthDemand(job: Job, guard: number): DepthDemand {
  const { groove, plate } = job;
  const raised = (chance: number): number => chance + guard * (1 - chance);
  return {
    least: groove.depth.wanted - groove.depth.minus,
    most: groove.depth.wanted + groove.depth.plus,
    mostForLigament: plate.thickness - groove.ligament_least,
    width: groove.width,
    assurance: raised(groove.assurance),
    ligamentAssurance: raised(groove.ligament_assurance),
  };
}

/** What every run of the job has in common. */
export function runDemand(job: Job, belief: RemovalBelief): RunDemand {
  return {
    zoneWidth: job.groove.floor_width,
    passLength: job.seam.length + 2 * runOutLength(job.groove),
    readingSd: job.kit.gauge.reading_sd,
    seamRange: belief.seamRange,
    meltingEnergy: belief.meltingEnergy,
  };
}
