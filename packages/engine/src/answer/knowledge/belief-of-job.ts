import type { Job, KitElectrode } from '../../job/index.ts';
import { beliefOfFamily, type Knowledge, sizeBand } from '../../learn/index.ts';
import { metalOf } from '../../material/index.ts';
import { publishedBelief, type RemovalBelief, widestBelief } from '../../removal/index.ts';

/**
 * What is known of removal for a job: of its metal and position, and of each electrode of its kit.
 *
 * The planner weighs electrodes against each other, so the belief carries that of each; what speaks for all of them is
 * the one held least surely.
 *
 * @param job - the job [record], as read
 * @param knowledge - what the shop knows [record], undefined for the published rows alone
 * @returns the belief [record]
 * @source process notes, section 1: knowledge is handed in once
 * @example
 * beliefOfJob(demoJob.job, undefined).id // => "published-2/carbon_steel/flat"
 */
export function beliefOfJob(job: Job, knowledge: Knowledge | undefined): RemovalBelief {
  const metal = metalOf(job.plate.material, job.plate.composition);
  if (knowledge === undefined) return publishedBelief(metal, job.seam.position);
  const byElectrode = job.kit.electrodes.map((electrode) => ({
    electrode,
    belief: beliefOfFamily(knowledge, metal, familyOf(electrode)),
  }));
  function familyOf({ diameter, kind }: KitElectrode) {
    return {
      metal: metal.family,
      position: job.seam.position,
      electrode: kind,
      band: sizeBand(diameter),
      ...(job.kit.torch !== undefined && { torch: job.kit.torch }),
    };
  }
  return { ...widestBelief(byElectrode.map(({ belief }) => belief)), byElectrode };
}
