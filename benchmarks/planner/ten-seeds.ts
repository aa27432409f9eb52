import { SHOP_JOBS, SMALL_JOBS } from './jobs.ts';
import { jobOf, leastOf, planned } from './planned.ts';

const SEEDS = 10;
/** Greatest over least objective that ten seeds may lie apart [-]. */
const SPREAD_MOST = 0.02;

/** How far the objective of ten seeds lies apart, on every job. */
export function tenSeeds(): void {
  console.log('\nTen seeds: greatest over least of the objective, less one');
  let held = 0;
  const jobs = [...SHOP_JOBS, ...SMALL_JOBS];
  for (const { name, document } of jobs) {
    const told = Array.from({ length: SEEDS }, (_, seed) => {
      const job = jobOf(document, seed + 1);
      const { result } = planned(job);
      return 'plan' in result ? { plan: result.plan, objective: leastOf(result, job) } : undefined;
    }).filter((each) => each !== undefined);
    const values = told.map(({ objective }) => objective);
    const spread = told.length === 0 ? 0 : Math.max(...values) / Math.min(...values) - 1;
    const ways = new Set(told.map(({ plan }) => `${plan.ways.join('+')} ${plan.layers}`));
    const all = told.length === 0 || told.length === SEEDS;
    if (spread <= SPREAD_MOST && all) held += 1;
    console.log(
      `${name.padEnd(38)} ${told.length} planned, ${(100 * spread).toFixed(2)} %  ${[...ways].join(', ')}${spread <= SPREAD_MOST && all ? '' : '   FALLS SHORT'}`,
    );
  }
  console.log(`${held} of ${jobs.length} below ${100 * SPREAD_MOST} %, with a plan at every seed or at none`);
}
