import type { Job } from '../job/index.ts';
import { meritBy } from './effort.ts';
import type { MissNote } from './miss.ts';
import { type Prospect, prospectWith } from './prospect.ts';
import type { SearchInput } from './search-task.ts';
import { type Contender, scoutOf, settle } from './settle.ts';
import { waysNear } from './ways.ts';

/** Gain from which on a nearby way takes the place of the one found [-]. */
const GAIN = 1e-3;
/** How much better than its forecast says a nearby way may be against the one it is near to [-]. */
const FORECAST_ERROR = 0.004;
/** Rounds of looking at nearby ways [-]. */
const ROUNDS = 6;

/** Looks in few shops at ways near the best, between the numbers that were tried, and solves the best of them; undefined: none is better. */
export function nearBest(
  input: SearchInput,
  found: Contender,
  objective: Job['plan']['objective'],
  miss: MissNote,
): Contender | undefined {
  const { task } = found.prospect;
  let best = prospectWith(task, found.prospect.way);
  let scout = scoutOf(input, best, miss, found.solved.logTarget);
  let least = meritBy(scout.merit, objective);
  const trail: { readonly prospect: Prospect; readonly logTarget: number }[] = [];
  const forecastBy = ({ forecast }: Prospect): number => meritBy(forecast.merit, objective);
  const tried = new Set<string>();
  for (let round = 0; round < ROUNDS; round += 1) {
    const before = best;
    for (const way of waysNear(before.way, input.job, task.passLength)) {
      const key = JSON.stringify(way);
      if (tried.has(key)) continue;
      tried.add(key);
      if (input.work.left <= 0) return undefined;
      const prospect = prospectWith(task, way);
      // What is forecast clearly worse than the best so far is not looked at in shops.
      if (forecastBy(prospect) > forecastBy(best) * (1 + FORECAST_ERROR)) continue;
      const seen = scoutOf(input, prospect, miss, scout.logTarget);
      const merit = meritBy(seen.merit, objective);
      if (seen.hopeless || merit >= least * (1 - GAIN)) continue;
      [best, scout, least] = [prospect, seen, merit];
    }
    if (best === before) break;
    trail.push({ prospect: best, logTarget: scout.logTarget });
  }
  // What few shops promise may fail in many: then the step before it may still hold.
  for (const { prospect, logTarget } of trail.reverse()) {
    const { contender } = settle(input, prospect, logTarget, miss);
    if (contender !== undefined && meritBy(contender.merit, objective) < meritBy(found.merit, objective))
      return contender;
  }
  return undefined;
}
