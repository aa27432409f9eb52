import type { Job } from '../job/index.ts';
import type { PlanOutcome } from '../plan/index.ts';
import { amountOf, type Sentence, say } from '../quantity/index.ts';
import type { RemovalBelief } from '../removal/index.ts';
import type { DepthAlong } from './depth-along.ts';
import { STRETCH_LEAST } from './event-thresholds.ts';
import type { RunExpectation } from './expectation.ts';
import { type RunSoFar, runSoFar } from './further-passes.ts';
import type { PassRun, RunEvent, RunOutcome } from './outcome.ts';
import { type Recut, recutLevel, recutToDepth } from './recut.ts';

/** A stretch of the seam that is not as it ought to be; SI. */
export interface SeamStretch {
  readonly kind: 'ungouged' | 'shallow' | 'deep';
  /** Pass that left it; undefined where all passes together do [-]. */
  readonly pass: number | undefined;
  /** Place from the start of the seam [m]. */
  readonly from: number;
  /** Where it ends [m]. */
  readonly to: number;
  /** Median of the depth at its worst cell; undefined for an ungouged one [m]. */
  readonly depth: number | undefined;
  /** What there is and what to do, in words. */
  readonly says: Sentence;
  readonly recut: Recut | undefined;
}

/** What a run is judged with. */
export interface Judged {
  readonly job: Job;
  readonly plan: PlanOutcome;
  readonly belief: RemovalBelief;
  readonly expected: RunExpectation;
}

/**
 * Stretches that are ungouged, shallow or deep, with what to do about each.
 *
 * Ungouged is told from the arc; shallow and deep from the median of the depth predicted, shallow only once all planned
 * passes are run. Only a gauge says how deep the groove is.
 *
 * @param outcome - what the log tells [record], from `reviewRun`
 * @param along - depth along the seam [record], from `depthAlong`, or undefined
 * @param judged - job, plan, belief and expectation [record], of one job
 * @returns the stretches in the order of the seam [list]
 * @source judgement, no source: least lengths; the rest by `depthAlong`
 * @example
 * stretchesOf(reviewRun().end(), undefined, {}) // => []
 */
export function stretchesOf(
  outcome: RunOutcome,
  along: DepthAlong | undefined,
  judged: Judged,
): SeamStretch[] {
  const bare = [
    ...outcome.events.flatMap((event) => ungougedBy(event, outcome, along, judged)),
    ...outcome.passes.flatMap((pass) => notReached(pass, judged)),
  ];
  const thick = along === undefined ? [] : offDepth(outcome, along, bare, judged);
  return [...bare, ...thick].sort((a, b) => a.from - b.from);
}

/**
 * Whether every pass that was planned was run.
 *
 * @param outcome - what the log tells [record], from `reviewRun`
 * @param expected - what the plan leads one to expect [record], from `expectationOf`
 * @returns true where each planned pass has one that covers its length [-]
 * @source definition
 * @example
 * isWhole(reviewRun().end(), { passes: [] }) // => true
 */
export function isWhole(outcome: RunOutcome, expected: RunExpectation): boolean {
  return expected.passes.every(({ number }) =>
    outcome.passes.some(({ planned, complete }) => planned === number && complete),
  );
}

const BREAKS: Readonly<Partial<Record<RunEvent['kind'], string>>> = {
  arc_out: 'the arc was out',
  short: 'the electrode was on the plate for',
  electrode_change: 'the electrode was changed, without an arc for',
};

function places(from: number, to: number): Sentence {
  return say`From ${amountOf(from, 'seam_place')} to ${amountOf(to, 'seam_place')}`;
}

function ungougedBy(
  event: RunEvent,
  outcome: RunOutcome,
  along: DepthAlong | undefined,
  judged: Judged,
): SeamStretch[] {
  const what = BREAKS[event.kind];
  if (what === undefined || event.from === undefined || event.to === undefined) return [];
  const from = Math.max(0, Math.min(event.from, event.to));
  const to = Math.min(judged.job.seam.length, Math.max(event.from, event.to));
  if (to - from < STRETCH_LEAST.ungouged) return [];
  const planned = outcome.passes.find(({ number }) => number === event.pass)?.planned;
  const depth = judged.plan.passes.find(({ number }) => number === planned)?.depth.p50 ?? 0;
  const { job, plan, belief } = judged;
  const recut =
    along !== undefined && isWhole(outcome, judged.expected)
      ? recutToDepth({ from, to }, runSoFar(outcome, along, judged))
      : depth > 0
        ? recutLevel({ from, to, depth }, job, plan, belief)
        : undefined;
  const time = amountOf(event.end - event.start, 'time');
  return [
    {
      kind: 'ungouged',
      pass: event.pass,
      from,
      to,
      depth: undefined,
      says: say`${places(from, to)} ${what} ${time} in pass ${event.pass ?? 1}: recut ${amountOf(to - from, 'depth')}.${inSteps(recut)}`,
      recut,
    },
  ];
}

/** Chance below which a recut is not held to bring a stretch to depth [-] (judgement). */
const REACHED_LEAST = 0.5;

/** How a recut is run in steps, and what to do where it most likely does not reach the depth. */
function inSteps(recut: Recut | undefined): Sentence | string {
  if (recut === undefined) return '';
  const { stop, passes, passesBefore, travel, chances } = recut;
  const percent = (chance: number): string => `${Math.floor(100 * chance)} %`;
  const surely =
    chances === undefined
      ? ''
      : `: the depth is then reached with ${percent(chances.reached)}, and nowhere too deep with ${percent(chances.notTooDeep)}`;
  const reached = chances?.reached ?? 1;
  const rest =
    reached >= REACHED_LEAST
      ? ''
      : ` What does not risk cutting too deep reaches the depth in ${Math.floor(100 * reached)} of 100 only: gauge the floor after it, enter the reading on the page Groove, and plan the rest from it.`;
  const times = (count: number): string => (count === 1 ? 'one pass' : `${count} passes`);
  if (stop === undefined)
    return passes === 1
      ? rest
      : say` Run ${times(passes)} on top of each other at ${amountOf(travel, 'speed')}${surely}.${rest}`;
  const where = stop.stations.length === 1 ? 'one place' : `${stop.stations.length} places`;
  if (passesBefore === 0)
    return say` Gauge it at ${where} first, and set ${times(passes)} by the table of the recut${surely}.${rest}`;
  const left = passes - passesBefore === 1 ? 'one more pass' : `${passes - passesBefore} more passes`;
  return say` Run ${times(passesBefore)} at ${amountOf(travel, 'speed')}, gauge at ${where}, and set ${left} by the table of the recut${surely}.${rest}`;
}

function notReached(pass: PassRun, judged: Judged): SeamStretch[] {
  const planned = judged.expected.passes.find(({ number }) => number === pass.planned);
  if (pass.complete || planned === undefined || pass.from === undefined || pass.to === undefined) return [];
  const from = Math.max(0, pass.to, pass.from);
  const to = Math.min(judged.job.seam.length, planned.to);
  if (to - from < STRETCH_LEAST.shallow) return [];
  return [
    {
      kind: 'ungouged',
      pass: pass.number,
      from,
      to,
      depth: undefined,
      says: say`${places(from, to)} pass ${pass.number} was not run: it ended early, or the log did. Run the rest of it.`,
      recut: undefined,
    },
  ];
}

function offDepth(
  outcome: RunOutcome,
  along: DepthAlong,
  bare: readonly SeamStretch[],
  judged: Judged,
): SeamStretch[] {
  const { wanted, plus, minus } = judged.job.groove.depth;
  const least = isWhole(outcome, judged.expected) ? wanted - minus : Number.NEGATIVE_INFINITY;
  const most = wanted + plus;
  const foot = judged.plan.electrode.diameter / 2;
  const inBare = (place: number): boolean =>
    bare.some(({ from, to }) => place > from - foot && place < to + foot);
  const run = runSoFar(outcome, along, judged);
  const found: SeamStretch[] = [];
  let open: { kind: 'shallow' | 'deep'; from: number; worst: number } | undefined;
  for (let at = 0; at <= along.cells; at += 1) {
    const place = (at + 0.5) * along.cell;
    const depth = at < along.cells && !inBare(place) ? along.median(at) : Number.NaN;
    const kind = depth < least ? 'shallow' : depth > most ? 'deep' : undefined;
    if (open !== undefined && open.kind !== kind) {
      const to = at * along.cell;
      if (to - open.from >= STRETCH_LEAST[open.kind]) found.push(stretch(open, to, run, judged));
      open = undefined;
    }
    if (kind === undefined) continue;
    open ??= { kind, from: at * along.cell, worst: depth };
    open.worst = kind === 'shallow' ? Math.min(open.worst, depth) : Math.max(open.worst, depth);
  }
  return found;
}

function stretch(
  { kind, from, worst }: { kind: 'shallow' | 'deep'; from: number; worst: number },
  to: number,
  run: RunSoFar,
  judged: Judged,
): SeamStretch {
  const { thickness } = judged.job.plate;
  const { wanted, plus, minus } = judged.job.groove.depth;
  const depth = amountOf(worst, 'depth');
  if (kind === 'deep')
    return {
      kind,
      pass: undefined,
      from,
      to,
      depth: worst,
      says:
        worst >= thickness
          ? say`${places(from, to)} the groove may be through the plate of ${amountOf(thickness, 'depth')}: stop, and look at the far side and at what lies behind it before anything else; it is a matter for the welding engineer.`
          : say`${places(from, to)} the groove may be ${depth} deep, where ${amountOf(wanted + plus, 'depth')} are the most: gauge it; what is too deep is a matter for the welding procedure.`,
      recut: undefined,
    };
  const recut = recutToDepth({ from, to }, run);
  const least = amountOf(wanted - minus, 'depth');
  return {
    kind,
    pass: undefined,
    from,
    to,
    depth: worst,
    says:
      recut === undefined
        ? say`${places(from, to)} the groove may be only ${depth} deep, where ${least} are the least: gauge it, and grind what is missing; a pass of the carriage would more likely cut too deep.`
        : recut.stop === undefined
          ? say`${places(from, to)} the groove may be only ${depth} deep, where ${least} are the least: gauge it, and recut at ${amountOf(recut.travel, 'speed')}.${inSteps(recut)}`
          : say`${places(from, to)} the groove may be only ${depth} deep, where ${least} are the least: recut it.${inSteps(recut)}`,
    recut,
  };
}
