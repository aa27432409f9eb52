import {
  afterCostOf,
  type Job,
  metalOf,
  type PlanOutcome,
  type PlanResult,
  planJob,
  processEasings,
  processLimits,
  publishedBelief,
  type RemovalBelief,
  readJob,
  sentenceText,
} from '@furrow/engine';

/** Passes, in one shop each, that a search may run here [-]: what is left tells how many it ran. */
const WORK = 1e9;

/** What a search found, and what it took. */
export interface Planned {
  readonly result: PlanResult;
  /** Passes run, each in one shop [-]. */
  readonly passes: number;
}

/** Reads a document that is known to be sound. */
export function jobOf(document: object, seed = 1): Job {
  const own = 'plan' in document ? (document.plan as object) : {};
  const read = readJob(JSON.stringify({ ...document, plan: { ...own, seed } }));
  if (!read.ok) throw new Error(read.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return read.value.job;
}

/** What a shop without history knows of a job's removal. */
export function startingBelief({ plate, seam }: Job): RemovalBelief {
  return publishedBelief(metalOf(plate.material, plate.composition), seam.position);
}

/** Plans a job by the process and the cost of the whole job, and counts the passes run. */
export function planned(job: Job, belief: RemovalBelief = startingBelief(job)): Planned {
  const work = { left: WORK };
  const result = planJob(job, belief, {
    limits: [processLimits(belief.meltingEnergy)],
    easings: processEasings(job),
    afterCost: afterCostOf(job),
    work,
  });
  return { result, passes: WORK - work.left };
}

/** The plan, or why there is none. */
export function planOf(job: Job, belief?: RemovalBelief): PlanOutcome | string {
  const { result } = planned(job, belief);
  return 'plan' in result ? result.plan : sentenceText(result.refusal.summary, 'metric');
}

/** The least that was found: of plans that cost nearly the same the quickest is told, and the least beside it. */
export function leastOf(result: Extract<PlanResult, { plan: PlanOutcome }>, job: Job): number {
  return Math.min(...[result.plan, ...result.alternatives].map((each) => objectiveOf(each, job)));
}

/** What a plan is ordered by: money, or time where the job asks for the quickest. */
export function objectiveOf(plan: PlanOutcome, job: Job): number {
  return job.plan.objective === 'time' ? plan.jobTime.mean : plan.wholeCost.mean;
}

/** Ways, electrode, current, tracks, layers and stations in one line. */
export function planLine(plan: PlanOutcome): string {
  const gauged = [plan.tryout?.stations.length ?? 0, ...plan.stops.map((stop) => stop.stations.length)];
  return [
    plan.ways.join('+').padEnd(13),
    `${(plan.electrode.diameter * 1000).toFixed(1)} mm ${plan.passes[0]!.current.toFixed(0)} A`.padEnd(14),
    `${plan.pattern.tracks} x ${plan.layers}`,
    `gauged ${gauged.join('/')}${plan.tryout === undefined ? '' : ` on ${(1000 * plan.tryout.length).toFixed(0)} mm`}`,
  ].join('  ');
}
