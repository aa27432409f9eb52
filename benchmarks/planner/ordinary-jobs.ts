import { beliefOfJob, type Job, type PlanOutcome } from '@furrow/engine';
import { SHOP_JOBS } from './jobs.ts';
import { jobOf, planLine, planOf } from './planned.ts';
import { learnedFrom, trueShop } from './true-shop.ts';

/** Jobs that must come out simple without history, and after so many trials [-]. */
const ASKED = { without: 12, after: 15 } as const;
const TRIALS = 10;

/** Every ordinary job as a shop without history plans it, and as one does that has cut ten trials of its own. */
export function ordinaryJobs(): void {
  const simple = { without: 0, after: 0 };
  console.log(
    '\nOrdinary jobs: ways, electrode, current, tracks x layers, stations, passes, minutes and cost on the mean',
  );
  for (const { name, document } of SHOP_JOBS) {
    const job = jobOf(document);
    console.log(name);
    const told = planOf(job);
    tell('without history ', told, 'without');
    const after = typeof told === 'string' ? told : planOf(job, beliefOfJob(job, trialsOf(job, told)));
    tell('after ten trials', after, 'after');
  }
  for (const key of ['without', 'after'] as const) {
    console.log(
      `${simple[key]} of ${SHOP_JOBS.length} in one pass or at most two layers ${key === 'without' ? 'without history' : 'after ten trials'}; asked: ${ASKED[key]}`,
    );
  }

  function tell(words: string, told: PlanOutcome | string, key: 'without' | 'after'): void {
    if (typeof told === 'string') {
      console.log(`  ${words}  refused: ${told}`);
      return;
    }
    if (told.layers <= 2) simple[key] += 1;
    console.log(
      `  ${words}  ${planLine(told)}  ${told.passes.length} passes  ${(told.jobTime.mean / 60).toFixed(1)} min  ${told.wholeCost.mean.toFixed(0)} ${told.currency}${told.layers > 2 ? '  (more than two layers)' : ''}`,
    );
  }
}

/** Ten trials with the electrode of the first plan, in a shop that is as middling as the published rows. */
function trialsOf(job: Job, plan: PlanOutcome): ReturnType<typeof learnedFrom> {
  const cut = Math.max(...plan.passes.map(({ depth }) => depth.p50));
  return learnedFrom(
    trueShop(1, 1, 0),
    job,
    plan.electrode,
    plan.passes[0]!.current,
    Math.max(cut, job.groove.depth.wanted / plan.layers),
    TRIALS,
    41,
  );
}
