import { sentenceText } from '@furrow/engine';
import { exhaustive, rerun, setupLine } from './exhaustive.ts';
import { SMALL_JOBS } from './jobs.ts';
import { jobOf, leastOf, planLine, planned } from './planned.ts';

/** How much dearer than the best of all a plan may be, and how much less work it must take. */
const DEARER_MOST = 0.01;
const LESS_WORK = 100;
const SEED = 40_503;

/** Holds the planner against an exhaustive search with code of its own on jobs with few choices. */
export function againstExhaustive(): void {
  console.log('\nAgainst an exhaustive search: objective, and passes run in one shop each');
  let [held, all] = [0, 0];
  for (const { name, document } of SMALL_JOBS) {
    const job = jobOf(document);
    const own = exhaustive(job, SEED);
    const { result, passes } = planned(job);
    all += 1;
    console.log(`${name}`);
    if (own.best === undefined || !('plan' in result)) {
      console.log(
        `  ${own.best === undefined ? 'exhaustive: none' : `exhaustive: ${own.objective.toFixed(1)}  ${setupLine(own.best)}`}; planner: ${'plan' in result ? planLine(result.plan) : sentenceText(result.refusal.summary, 'metric')}`,
      );
      if (own.best === undefined && !('plan' in result)) held += 1;
      continue;
    }
    const objective = leastOf(result, job);
    const dearer = objective / own.objective - 1;
    const less = own.full / passes;
    const holds = dearer <= DEARER_MOST && less >= LESS_WORK;
    if (holds) held += 1;
    console.log(`  exhaustive ${own.objective.toFixed(1)}  ${setupLine(own.best)}`);
    for (const each of own.kinds.slice(1)) {
      console.log(`             ${each.objective.toFixed(1)}  ${setupLine(each.setup)}`);
    }
    console.log(
      `  planner    ${objective.toFixed(1)}  ${planLine(result.plan)}; run here ${rerun(result.plan, job, SEED).toFixed(1)}`,
    );
    console.log(
      `  dearer by ${(100 * dearer).toFixed(2)} %, a grid of ${(own.full / 1e6).toFixed(0)} M passes (${(own.passes / 1e6).toFixed(0)} M run) against ${(passes / 1e6).toFixed(2)} M: ${less.toFixed(0)} times less${holds ? '' : '   FALLS SHORT'}`,
    );
  }
  console.log(`${held} of ${all} within ${100 * DEARER_MOST} % at ${LESS_WORK} times less work`);
}
