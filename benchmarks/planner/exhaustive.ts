import { afterCostOf, currentRangeOf, type Job, type PlanOutcome } from '@furrow/engine';
import { type OwnOutcome, type OwnSetup, type OwnTask, ownRun } from './own-run.ts';
import { ownShops } from './own-shops.ts';
import { startingBelief } from './planned.ts';

/** Shops that tables are learned from, those of the first look, and those that decide among the best [-]. */
const SHOPS = { learning: 512, first: 1024, last: 8192 } as const;
/** Rise of the depth aimed at from step to step, at first and among the best [-]. */
const STEP = { first: 1.02, last: 1.003 } as const;
/** Set-ups that are decided between [-]. */
const BEST = 10;
/** Chance that a first look may be short of and still be looked at again [-]. */
const NEARLY = 0.012;
/** Set-ups up to which every depth is run, from the least on [-]. */
const FEW = 300;
/** Steps beyond the first depth that reaches that are tried where it fails elsewhere [-]. */
const TRIED_ON = 2;
/** Currents from an electrode's greatest, less what keeps it from spalling, down [-]. */
const CURRENTS = 7;
const CURRENT_MOST = 0.95;

/** The best set-up of an exhaustive search, and what it took. */
export interface Exhaustive {
  readonly best: OwnSetup | undefined;
  readonly outcome: OwnOutcome | undefined;
  readonly objective: number;
  /** The best of each kind of way, the best kind first. */
  readonly kinds: readonly { readonly kind: string; readonly setup: OwnSetup; readonly objective: number }[];
  /** Passes run, each in one shop [-]; and what running every depth on the grid would have taken. */
  readonly passes: number;
  readonly full: number;
}

/** A set-up in one line. */
export function setupLine(setup: OwnSetup): string {
  const { electrode, current, tracks, shares, tryout, stops, stations, target } = setup;
  return [
    kindOf(setup).padEnd(13),
    `${(electrode.diameter * 1000).toFixed(1)} mm ${current.toFixed(0)} A`.padEnd(14),
    `${tracks} x ${shares.length}`,
    shares.length > 1 ? `first ${shares[0]!.toFixed(2)}` : '',
    tracks > 1 ? `every ${(setup.spacing * 1000).toFixed(1)} mm` : '',
    tryout === undefined ? '' : `gauged ${tryout.stations} on ${(1000 * tryout.length).toFixed(0)} mm`,
    stops > 0 ? `stops ${stops} of ${stations}` : '',
    `aims at ${(target * 1000).toFixed(2)} mm`,
  ]
    .filter((part) => part !== '')
    .join('  ');
}

function kindOf({ tryout, stops }: OwnSetup): string {
  return [tryout?.kind, stops > 0 ? 'layers' : undefined].filter(Boolean).join('+') || 'blind';
}

/** The plan as this search would run it, but for its depth aimed at. */
function setupOfPlan(plan: PlanOutcome, target: number): OwnSetup {
  const first = plan.passes[0]!;
  const depths = Array.from(
    { length: plan.layers },
    (_, layer) => plan.passes.find((pass) => pass.layer === layer + 1)!.depth.p50,
  );
  const sum = depths.reduce((total, depth) => total + depth, 0);
  const runIn = plan.tryout?.kind === 'run_in';
  return {
    electrode: plan.electrode,
    current: first.current,
    tracks: plan.pattern.tracks,
    spacing: plan.pattern.spacing,
    tryout: plan.tryout && {
      kind: plan.tryout.kind,
      length: plan.tryout.length,
      stations: plan.tryout.stations.length,
    },
    shares: runIn ? [1] : depths.map((depth) => depth / sum),
    stops: plan.stops.length,
    stations: plan.stops[0]?.stations.length ?? 1,
    target,
    doneFrom: 0.35,
  };
}

/** Runs every set-up on a fine grid, then the best ones again in more shops; tells the one that is best of all. */
export function exhaustive(job: Job, seed: number): Exhaustive {
  const belief = startingBelief(job);
  const angleTerm = (job.kit.push_angle - Math.PI / 4) / (Math.PI / 12);
  const shopsOf = (count: number, more: number) => ownShops(belief, angleTerm, count, seed + more);
  const base = {
    job,
    meltingEnergy: belief.meltingEnergy,
    afterCost: afterCostOf(job),
    extraWidth: belief.extraWidth[0]!.mean,
    learning: shopsOf(SHOPS.learning, 1),
  };
  const first: OwnTask = { ...base, shops: shopsOf(SHOPS.first, 2) };
  const last: OwnTask = { ...base, shops: shopsOf(SHOPS.last, 3) };
  const wanted = job.groove.depth;
  const [least, most] = [wanted.wanted - wanted.minus, wanted.wanted + wanted.plus];
  let [passes, full] = [0, 0];
  const tried = (task: OwnTask, setup: OwnSetup): OwnOutcome => {
    const outcome = ownRun(task, setup);
    passes += outcome.passes;
    return outcome;
  };
  const objective = (outcome: OwnOutcome): number =>
    job.plan.objective === 'time' ? outcome.time : outcome.cost;
  const found: { setup: OwnSetup; objective: number }[] = [];
  const grid = [...setupsOf(job, base.extraWidth)];
  const few = grid.length < FEW;
  const wantedNearly = job.groove.assurance - NEARLY;
  for (const setup of grid) {
    // The deeper the aim, the surer the depth and the dearer the groove: the least that reaches is the one that matters.
    const steps = Math.ceil(Math.log(most / least) / Math.log(STEP.first));
    const at = (step: number): OwnSetup => ({ ...setup, target: least * STEP.first ** step });
    full += steps * (setup.shares.length * setup.tracks + (setup.tryout === undefined ? 0 : 1)) * SHOPS.first;
    let [low, high] = [-1, steps];
    // Where there are few set-ups every depth is run all the same.
    if (few) while (high - low > 1 && tried(first, at(low + 1)).reached < wantedNearly) low += 1;
    if (few) high = low + 1;
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (tried(first, at(middle)).reached >= wantedNearly) high = middle;
      else low = middle;
    }
    for (let step = high; step < Math.min(steps, high + TRIED_ON); step += 1) {
      const outcome = tried(first, at(step));
      if (!meets(outcome, job, NEARLY)) continue;
      found.push({ setup: at(step), objective: objective(outcome) });
      break;
    }
  }
  found.sort((a, b) => a.objective - b.objective);
  const kinds = new Map<string, { kind: string; setup: OwnSetup; objective: number }>();
  for (const each of found) {
    const kind = kindOf(each.setup);
    if (!kinds.has(kind)) kinds.set(kind, { kind, ...each });
  }
  const again = new Set([...found.slice(0, BEST), ...kinds.values()].map(({ setup }) => setup));
  const settled: { setup: OwnSetup; outcome: OwnOutcome; objective: number }[] = [];
  for (const setup of again) {
    const from = setup.target / STEP.first ** 1.5;
    const to = setup.target * STEP.first ** 2.5;
    for (let target = from; target < to; target *= STEP.last) {
      const own = { ...setup, target };
      const outcome = tried(last, own);
      if (!meets(outcome, job, 0)) continue;
      settled.push({ setup: own, outcome, objective: objective(outcome) });
      break;
    }
  }
  settled.sort((a, b) => a.objective - b.objective);
  const best = settled[0];
  const bestOfKind = [...kinds.keys()].flatMap((kind) => {
    const own = settled.find(({ setup }) => kindOf(setup) === kind);
    return own === undefined ? [] : [{ kind, setup: own.setup, objective: own.objective }];
  });
  return {
    best: best?.setup,
    outcome: best?.outcome,
    objective: best?.objective ?? Number.POSITIVE_INFINITY,
    kinds: bestOfKind.sort((a, b) => a.objective - b.objective),
    passes,
    full,
  };
}

/** How a plan of the planner does in the shops of this search, aimed as deep as it must be here. */
export function rerun(plan: PlanOutcome, job: Job, seed: number): number {
  const belief = startingBelief(job);
  const angleTerm = (job.kit.push_angle - Math.PI / 4) / (Math.PI / 12);
  const task: OwnTask = {
    job,
    meltingEnergy: belief.meltingEnergy,
    afterCost: afterCostOf(job),
    extraWidth: belief.extraWidth[0]!.mean,
    learning: ownShops(belief, angleTerm, SHOPS.learning, seed + 1),
    shops: ownShops(belief, angleTerm, SHOPS.last, seed + 3),
  };
  const { depth } = job.groove;
  for (let target = depth.wanted - depth.minus; target < depth.wanted + depth.plus; target *= STEP.last) {
    for (const doneFrom of DONE_FROM) {
      const outcome = ownRun(task, { ...setupOfPlan(plan, target), doneFrom });
      if (meets(outcome, job, 0)) return job.plan.objective === 'time' ? outcome.time : outcome.cost;
    }
  }
  return Number.NaN;
}

function meets(outcome: OwnOutcome, { groove }: Job, short: number): boolean {
  return (
    outcome.reached >= groove.assurance - short &&
    outcome.notTooDeep >= groove.assurance - short &&
    outcome.widthInBand >= groove.assurance - short &&
    outcome.ligamentKept >= groove.ligament_assurance - short / 2
  );
}

const DONE_FROM = [0.2, 0.4, 0.6] as const;

/** Every set-up on the grid, the depth aimed at left open. */
function* setupsOf(job: Job, extraWidth: number): Generator<Omit<OwnSetup, 'target'>> {
  for (const electrode of job.kit.electrodes) {
    const range = currentRangeOf(electrode);
    if (range === undefined) continue;
    const low = Math.max(range.least, job.kit.current.least);
    const high = Math.min(CURRENT_MOST * range.most, job.kit.current.most);
    for (let step = 0; step < CURRENTS && high >= low; step += 1) {
      const current = high - ((high - low) * step) / (CURRENTS - 1);
      for (const { tracks, spacing } of patternsOf(job, electrode.diameter + extraWidth)) {
        for (const way of waysOf(job, tracks)) yield { electrode, current, tracks, spacing, ...way };
      }
    }
  }
}

function patternsOf(job: Job, width: number): { readonly tracks: number; readonly spacing: number }[] {
  const list = [{ tracks: 1, spacing: 0 }];
  for (let tracks = 2; tracks <= job.plan.tracks_most; tracks += 1) {
    for (let part = 0.3; part <= 0.901; part += 0.05) list.push({ tracks, spacing: part * width });
  }
  const most = job.groove.width.most;
  const least = job.groove.width.least;
  // A median width that lies outside the band never lies in it surely enough.
  return list.filter(({ tracks, spacing }) => {
    const widest = width + 3e-3 + (tracks - 1) * spacing;
    const narrowest = 0.6 * width + (tracks - 1) * spacing;
    return widest >= least && narrowest <= most;
  });
}

type OwnWay = Pick<OwnSetup, 'tryout' | 'shares' | 'stops' | 'stations' | 'doneFrom'>;

function waysOf(job: Job, tracks: number): OwnWay[] {
  const { plan, kit, seam } = job;
  const ways: OwnWay[] = [];
  const plain = { tryout: undefined, stops: 0, stations: 1, doneFrom: 1 };
  const gauging = plan.gauge_stops === 'allowed';
  const lengths = (most: number): number[] => {
    const list = [0.1, 0.125, 0.15, 0.2, 0.25, 0.3, 0.4, 0.55, 0.75, 1, 1.4].filter((each) => each < most);
    return [...list, most].filter((each) => each >= 0.1);
  };
  const stations = Array.from({ length: kit.gauge.stations_most }, (_, i) => i + 1);
  const tryouts = (kind: 'trial' | 'run_in', most: number) =>
    lengths(most).flatMap((length) => stations.map((each) => ({ kind, length, stations: each })));
  const trials = gauging && kit.trial.on !== 'none' ? tryouts('trial', kit.trial.length_most) : [];
  for (let layers = 1; layers <= plan.layers_most; layers += 1) {
    for (const shares of blindShares(layers)) {
      ways.push({ ...plain, shares });
      for (const tryout of trials) ways.push({ ...plain, shares, tryout });
    }
    if (layers === 1 && tracks === 1 && gauging) {
      for (const tryout of tryouts('run_in', 0.4 * seam.length)) ways.push({ ...plain, shares: [1], tryout });
    }
    if (layers === 1 || !gauging) continue;
    for (const shares of gaugedShares(layers)) {
      for (const each of stations) {
        for (const doneFrom of DONE_FROM) {
          const gauged = { shares, stops: 1, stations: each, doneFrom };
          ways.push({ ...gauged, tryout: undefined });
          if (each > 2) continue;
          for (const tryout of trials.filter((trial) => trial.stations === 2 && trial.length > 0.14)) {
            ways.push({ ...gauged, tryout });
          }
        }
      }
    }
  }
  return ways;
}

function blindShares(layers: number): number[][] {
  if (layers !== 2) return [Array.from({ length: layers }, () => 1 / layers)];
  return [0.5, 0.6, 0.7, 0.8, 0.9].map((first) => [first, 1 - first]);
}

function gaugedShares(layers: number): number[][] {
  return [0.05, 0.08, 0.12, 0.16, 0.2, 0.26, 0.33, 0.4, 0.5].map((last) => [
    ...Array.from({ length: layers - 1 }, () => (1 - last) / (layers - 1)),
    last,
  ]);
}
