import { amountOf, type Sentence, say } from '../../quantity/index.ts';
import type { RemainingPasses } from '../../result/index.ts';
import {
  type DepthAlong,
  type Judged,
  planRest,
  type RunOutcome,
  runSoFar,
  type SeamStretch,
} from '../../run/index.ts';

/** Places at which the depth so far is read [-]. */
const PLACES = 200;

/**
 * The rest of a plan from the depth now expected along the seam, planned anew: passes, travel, and a gauge stop where one
 * is needed. Undefined before any layer is whole, and where nothing of the plan is left.
 */
export function remainingOf(
  outcome: RunOutcome,
  along: DepthAlong | undefined,
  stretches: readonly SeamStretch[],
  { job, plan, belief }: Judged,
): RemainingPasses | undefined {
  const run = new Set(outcome.passes.flatMap(({ planned, complete }) => (complete ? [planned] : [])));
  const left = plan.passes.filter(({ number }) => !run.has(number));
  const [next] = left;
  if (along === undefined || next === undefined || run.size === 0) return undefined;
  const step = Math.max(1, Math.floor(along.cells / PLACES));
  let [sum, count] = [0, 0];
  for (let at = 0; at < along.cells; at += step) {
    sum += along.median(at);
    count += 1;
  }
  const byLayer = new Map<number, number[]>();
  for (const { layer, depth } of plan.passes) byLayer.set(layer, [...(byLayer.get(layer) ?? []), depth.p50]);
  const end = [...byLayer.values()].reduce(
    (total, tracks) => total + tracks.reduce((a, b) => a + b, 0) / tracks.length,
    0,
  );
  // tracks of a layer that is begun are finished as they were begun: what follows is planned onto the whole layer
  const begun = new Set(plan.passes.filter(({ number }) => run.has(number)).map(({ layer }) => layer));
  const open = left.filter(({ layer }) => begun.has(layer)).map(({ number }) => number);
  const layers = new Set(left.filter(({ layer }) => !begun.has(layer)).map(({ layer }) => layer)).size;
  const bare = stretches.filter(({ kind }) => kind === 'ungouged');
  const planned = planRest(runSoFar(outcome, along, { job, plan, belief }), layers, bare);
  const rest: Omit<RemainingPasses, 'says'> = {
    passes: left.map(({ number }) => number),
    now: sum / count,
    end,
    planned: next.travel,
    plan: planned,
    apart: planned.apart,
    stop:
      planned.table.length === 0
        ? undefined
        : {
            afterLayer: along.layers.length + planned.passesBefore,
            stations: planned.stations,
            readingSd: job.kit.gauge.reading_sd,
            table: planned.table,
          },
  };
  return { ...rest, says: restWords(rest, open, job.groove.depth.wanted) };
}

function restWords(
  { plan, planned, stop, apart }: Omit<RemainingPasses, 'says'>,
  open: readonly number[],
  wanted: number,
): Sentence {
  const { before, chances, passes, travel } = plan;
  const begun = open.length === 0 ? '' : `Finish ${passWord(open)} as planned first. `;
  const depths = say`${begun}${amountOf(before.p50, 'depth')} are cut by now, between ${amountOf(before.p05, 'depth')} and ${amountOf(before.p95, 'depth')} by this log; ${amountOf(wanted, 'depth')} are wanted`;
  const surely = say`the depth is then reached everywhere with ${percent(chances.reached)} and nowhere too deep with ${percent(chances.notTooDeep)}`;
  const short = plan.meets
    ? ''
    : ' No way of going on is as sure as the job asks: show this to the welding engineer before the next arc.';
  const [spot] = apart;
  const deeper =
    spot === undefined
      ? ''
      : say` Much more was put into the seam ${apart.length === 1 ? '' : `at ${apart.length} places, first `}from ${amountOf(spot.from, 'seam_place')} to ${amountOf(spot.to, 'seam_place')}: gauge it there before anything more is cut over it.`;
  if (passes === 0) return say`${depths}. Leave it as it is and gauge it: ${surely}.${short}${deeper}`;
  const count = passes === 1 ? 'one pass' : `${passes} passes`;
  if (stop === undefined) {
    return say`${depths}. Run ${count} more at ${amountOf(travel!, 'speed')} in place of ${amountOf(planned, 'speed')}: ${surely}.${short}${deeper}`;
  }
  const first =
    travel === undefined
      ? say`Gauge at ${stop.stations.length} stations now`
      : say`Run ${plan.passesBefore === 1 ? 'one pass' : `${plan.passesBefore} passes`} at ${amountOf(travel, 'speed')} in place of ${amountOf(planned, 'speed')}, then gauge at ${stop.stations.length} stations`;
  const left =
    passes - plan.passesBefore === 1 ? 'one more pass' : `${passes - plan.passesBefore} more passes`;
  return say`${depths}. ${first}, take the mean, and set ${left} by the table: ${surely}.${short}${deeper}`;
}

function passWord(numbers: readonly number[]): string {
  return numbers.length === 1 ? `pass ${numbers[0]}` : `passes ${numbers.join(', ')}`;
}

function percent(chance: number): string {
  return `${Math.floor(100 * chance)} %`;
}
