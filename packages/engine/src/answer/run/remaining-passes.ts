import { amountOf, say } from '../../quantity/index.ts';
import type { RemainingPasses } from '../../result/index.ts';
import { type DepthAlong, type Judged, type RunOutcome, travelForDepth } from '../../run/index.ts';

/** Places at which the depth so far is read [-]. */
const PLACES = 200;

/**
 * The rest of a plan from the depth now expected: what is missing is shared evenly among the layers that remain, and
 * the travel follows from the removal law. Undefined before any pass is whole.
 */
export function remainingOf(
  outcome: RunOutcome,
  along: DepthAlong | undefined,
  { job, plan, belief }: Judged,
): RemainingPasses | undefined {
  const run = new Set(outcome.passes.flatMap(({ planned, complete }) => (complete ? [planned] : [])));
  const left = plan.passes.filter(({ number }) => !run.has(number));
  const [next] = left;
  if (along === undefined || next === undefined || run.size === 0) return undefined;
  const step = Math.max(1, Math.floor(along.cells / PLACES));
  let sum = 0;
  let count = 0;
  for (let at = 0; at < along.cells; at += step) {
    sum += along.median(at);
    count += 1;
  }
  const now = sum / count;
  const byLayer = new Map<number, number[]>();
  for (const { layer, depth } of plan.passes) byLayer.set(layer, [...(byLayer.get(layer) ?? []), depth.p50]);
  const end = [...byLayer.values()].reduce(
    (total, tracks) => total + tracks.reduce((a, b) => a + b, 0) / tracks.length,
    0,
  );
  const layers = new Set(left.map(({ layer }) => layer)).size;
  const each = (end - now) / layers;
  const passes = left.map(({ number }) => number);
  const base = { passes, now, end, planned: next.travel };
  const depths = say`${amountOf(now, 'depth')} are cut on the mean, ${amountOf(end, 'depth')} are meant`;
  if (each <= 0)
    return {
      ...base,
      travel: undefined,
      says: say`${depths}: gauge before you run any further, nothing may be left to cut.`,
    };
  const travel = Math.max(job.kit.travel.least, travelForDepth(job, plan, belief, each));
  if (travel > job.kit.travel.most)
    return {
      ...base,
      travel: undefined,
      says: say`${depths}: what is left is less than the carriage can cut; gauge, and grind the rest.`,
    };
  const rest = passes.length === 1 ? `pass ${passes[0]}` : `passes ${passes.join(', ')}`;
  return {
    ...base,
    travel,
    says: say`${depths}: run ${rest} at ${amountOf(travel, 'speed')} in place of ${amountOf(next.travel, 'speed')}. A gauge tells more than this log: where the plan has a stop, read it and follow its table.`,
  };
}
