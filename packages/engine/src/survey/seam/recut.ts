import { drawStream, normalQuantile, percentiles } from '../../numeric/index.ts';
import { type FloorShops, planOntoFloor } from '../../plan/index.ts';
import type { DepthBand, SeamDepth, Stretch } from './judge-seam.ts';
import { type SeamSpread, seamStates } from './seam-states.ts';

/** How a repair pass cuts: its depth falls with travel to a power. */
export interface RepairLaw {
  /** Median depth of a pass at the travel below, as the readings of this seam have it [m]. */
  readonly depth: number;
  /** Travel of that [m/s]. */
  readonly travel: number;
  /** Power by which depth falls with travel [-]. */
  readonly power: number;
  /** Spread of a pass about its median, and along it; in ln depth. */
  readonly spread: SeamSpread;
  /** Greatest depth that leaves the plate its least [m]. */
  readonly plateMost: number;
  /** Chance with which it is to be left at least [-]. */
  readonly plateChance: number;
  /** Chance wanted for reaching, and for not exceeding, the depth [-]. */
  readonly assurance: number;
  /** Greatest depth that the energy balance allows one pass at a travel [m]. */
  readonly ceiling: (travel: number) => number;
  /** Least travel that the carriage keeps [m/s]. */
  readonly travelLeast: number;
  /** Greatest travel that it keeps [m/s]. */
  readonly travelMost: number;
  /** Length over which the cut comes up to depth at its start, and runs out at its end [m]. */
  readonly ramp: number;
  /** Density of the metal [kg/m3]. */
  readonly density: number;
  /** Width of the groove [m]. */
  readonly width: number;
}

/** Short passes on top of each other that bring a shallow stretch to depth. */
export interface RecutPass {
  readonly kind: 'pass';
  /** Where the torch starts, run-in included [m]. */
  readonly from: number;
  /** Where it ends, run-out included [m]. */
  readonly to: number;
  /** Length of run-in and of run-out, each inside that [m]. */
  readonly ramp: number;
  /** How many [-]. */
  readonly passes: number;
  /** Depth that they take off together, in the middle of what is known [m]. */
  readonly depth: number;
  /** Travel of each [m/s]. */
  readonly travel: number;
  /** Chance that the stretch then reaches its least depth everywhere [-]. */
  readonly reached: number;
  /** Chance that it is then too deep nowhere, plate left included [-]. */
  readonly notTooDeep: number;
  /** Chance that the plate left keeps its least everywhere, run-in and run-out included [-]. */
  readonly plateKept: number;
}

/** What is done about a stretch that fails. */
export type SeamRepair =
  | RecutPass
  | {
      readonly kind: 'grind' | 'none';
      /** Where the stretch begins [m]. */
      readonly from: number;
      /** Where it ends [m]. */
      readonly to: number;
      /** Why no pass is proposed, in words. */
      readonly reason: string;
      /** Mean depth that is missing [m]. */
      readonly missing: number;
    }
  | {
      readonly kind: 'weld';
      /** Where the stretch begins [m]. */
      readonly from: number;
      /** Where it ends [m]. */
      readonly to: number;
      /** Mean depth beyond the greatest [m]. */
      readonly over: number;
      /** Weld metal to be added up to the greatest depth [kg]. */
      readonly weldMetal: number;
      /** The same as the courses that the floor may take have it [kg]. */
      readonly weldMetalBand: {
        /** 5th percentile [kg]. */
        readonly p05: number;
        /** Median [kg]. */
        readonly p50: number;
        /** 95th percentile [kg]. */
        readonly p95: number;
      };
    };

/** Shops in which the passes are solved, and in which they are counted [-], and the seeds of both. */
const SHOPS = { solve: { count: 256, seed: 71_993 }, fair: { count: 768, seed: 176_722 } } as const;
/** Passes on top of each other that are tried at most [-]: more is a job of its own. */
const PASSES_MOST = 3;
/** Quantile of a normal distribution at 95 % [-]. */
const Q95 = normalQuantile(0.95);
/** Chance below which a repair pass is no better than what is there [-]. */
const CHANCE_LEAST = 0.5;

/**
 * Whether nobody has seen where a fault that one place tells of begins or ends: a repair over good groove would make that
 * too deep. Less than the groove is wide, or than run-in and run-out take, is near enough.
 *
 * @param stretch - the stretch [record], from `spotFaults`
 * @param law - how a repair pass cuts [record], its ramp and the groove's width > 0
 * @returns whether its ends are to be gauged first [-]
 * @source common practice, no source
 * @example
 * hasUnseenEnds({ unseen: { before: 0.1, after: 0.01 } }, { ramp: 0.01, width: 0.016 }) // => true
 */
export function hasUnseenEnds(
  { unseen }: Pick<Stretch, 'unseen'>,
  { ramp, width }: Pick<RepairLaw, 'ramp' | 'width'>,
): boolean {
  return unseen !== undefined && Math.max(unseen.before, unseen.after) > Math.max(ramp, width);
}

/**
 * Plans the repair of a stretch that fails, from the floor as it was measured, as passes onto a floor are planned anywhere.
 *
 * Too deep and the plate left are looked at over run-in and run-out as well; the depth must be reached on the stretch alone.
 *
 * @param stretch - the stretch [record], one that fails
 * @param depth - the depth along the seam [record], from `fuseSeam`
 * @param band - depths that it must keep to [record], least below most
 * @param law - how a repair pass cuts [record], all values > 0
 * @returns a pass, or what else is done [record]
 * @source `planOntoFloor`, from the measured floor
 * @example
 * const posterior = fuseSeam({ common: 0.01, course: 0.01, range: 0.25 }, [], [0, 0.1, 0.2, 0.3]);
 * const law = { depth: 0.01, travel: 0.01, power: 1.4, spread: { common: 0.04, course: 0.045, range: 0.25 }, plateMost: 0.02, plateChance: 0.99, assurance: 0.95, ceiling: () => 1, travelLeast: 0.002, travelMost: 0.05, ramp: 0.01, density: 7850, width: 0.016 };
 * recutOf({ from: 0, to: 0.3, miss: 'shallow' }, { median: [0.008, 0.008, 0.008, 0.008], posterior }, { least: 0.01, most: 0.014 }, law).kind // => "pass"
 */
export function recutOf(
  stretch: Pick<Stretch, 'from' | 'to' | 'miss' | 'unseen'>,
  depth: SeamDepth,
  band: DepthBand,
  law: RepairLaw,
): SeamRepair {
  const { at, mean } = depth.posterior;
  const { from, to } = stretch;
  const own = at.flatMap((place, i) => (place >= from - 1e-9 && place <= to + 1e-9 ? [i] : []));
  const depthAt = (i: number): number => depth.median[i]! * Math.exp(mean[i]!);
  const average = (of: (i: number) => number): number =>
    own.reduce((sum, i) => sum + of(i), 0) / Math.max(1, own.length);
  if (stretch.miss === 'deep') {
    const over = average((i) => Math.max(0, depthAt(i) - band.most));
    const perDepth = law.width * (to - from) * law.density;
    const stream = drawStream(SHOPS.fair.seed);
    const metals = Float64Array.from({ length: SHOPS.fair.count }, () => {
      const course = depth.posterior.draw(stream);
      return perDepth * average((i) => Math.max(0, depth.median[i]! * Math.exp(course[i]!) - band.most));
    });
    const [p05, p50, p95] = percentiles(metals, [0.05, 0.5, 0.95]);
    return {
      kind: 'weld',
      from,
      to,
      over,
      weldMetal: over * perDepth,
      weldMetalBand: { p05: p05!, p50: p50!, p95: p95! },
    };
  }
  const missing = average((i) => Math.max(0, band.least - depthAt(i)));
  if (hasUnseenEnds(stretch, law))
    return {
      kind: 'none',
      from,
      to,
      missing,
      reason:
        'one place alone tells of this fault: gauge to both sides of it until the floor is as it is around, then what to cut again is planned between those places',
    };
  const start = Math.max(at[0]!, from - law.ramp);
  const end = Math.min(at.at(-1)!, to + law.ramp);
  const touched = at.flatMap((place, i) => (place >= start - 1e-9 && place <= end + 1e-9 ? [i] : []));
  const share = touched.map((i) =>
    Math.max(
      0,
      Math.min(
        1,
        (at[i]! - start) / law.ramp + (start === from ? 1 : 0),
        (end - at[i]!) / law.ramp + (end === to ? 1 : 0),
      ),
    ),
  );
  const places = touched.map((i) => at[i]!);
  const must = places.map((place) => place >= from - 1e-9 && place <= to + 1e-9);
  const floor = { depth, places, touched, law };
  const plan = planOntoFloor({
    shops: floorShops(floor, SHOPS.solve),
    fair: floorShops(floor, SHOPS.fair),
    share,
    must: must.includes(true) ? must : places.map(() => true),
    least: band.least,
    most: band.most,
    mostForLigament: law.plateMost,
    assurance: law.assurance,
    ligamentAssurance: law.plateChance,
    travel: { least: law.travelLeast, most: law.travelMost },
    ceiling: law.ceiling,
    passesMost: PASSES_MOST,
    effort: (passes) => passes,
  });
  const takenAt = (travel: number): number => law.depth * (law.travel / travel) ** law.power;
  const { reached, notTooDeep, ligamentKept } = plan.chances;
  const not = (kind: 'grind' | 'none', reason: string): SeamRepair => ({ kind, from, to, missing, reason });
  // a plate that may be cut through is no repair, whatever else it would bring
  if (ligamentKept < law.plateChance)
    return not(
      'none',
      'no pass would surely leave the plate its least thickness: grind it, and measure the plate left from behind',
    );
  if (plan.travel === undefined || Math.min(reached, notTooDeep) < CHANCE_LEAST) {
    const lowest = Math.min(...own.map(depthAt));
    if (takenAt(law.travelMost) > Math.max(band.most - lowest, 1e-4))
      return not(
        'grind',
        'the carriage cannot run fast enough to take so little off: grind it, or use a smaller electrode',
      );
    return PASSES_MOST * takenAt(law.travelLeast) < missing
      ? not('none', 'too much is missing for a repair: plan the stretch as a job of its own')
      : not(
          'none',
          'no repair passes would bring it into its limits with a chance above one half: measure it more closely first, or grind it',
        );
  }
  return {
    kind: 'pass',
    from: start,
    to: end,
    ramp: law.ramp,
    passes: plan.passes,
    depth: plan.passes * takenAt(plan.travel),
    travel: plan.travel,
    reached,
    notTooDeep,
    plateKept: ligamentKept,
  };
}

/**
 * Plate left at the deepest place of a repair: as it is, or where a pass mends it as that pass will leave it.
 *
 * @param repair - the repair [record], from `recutOf`
 * @param depth - the depth along the seam [record], from `fuseSeam`
 * @param law - how a repair pass cuts [record], its spread > 0
 * @param thickness - thickness of the plate [m], more than the depth
 * @returns median and 90 % interval [record of m]
 * @source derived: floor and cut wander apart from each other; ln of the depth taken as Gaussian
 * @example
 * const posterior = fuseSeam({ common: 0.01, course: 0.01, range: 0.25 }, [], [0, 0.1]);
 * plateLeftOf({ kind: 'weld', from: 0, to: 0.1 }, { median: [0.01, 0.012], posterior }, { spread: { common: 0.04, course: 0.04 } }, 0.03).p50 // => 0.018
 */
export function plateLeftOf(
  repair: Pick<SeamRepair, 'kind' | 'from' | 'to'> & { readonly depth?: number },
  { median, posterior: { at, mean, sd } }: SeamDepth,
  { spread }: { readonly spread: Pick<SeamSpread, 'common' | 'course'> },
  thickness: number,
): { readonly p05: number; readonly p50: number; readonly p95: number } {
  const floorAt = (i: number): number => median[i]! * Math.exp(mean[i]!);
  const own = at.flatMap((place, i) => (place >= repair.from - 1e-9 && place <= repair.to + 1e-9 ? [i] : []));
  const deepest = own.reduce((best, i) => (floorAt(i) > floorAt(best) ? i : best), own[0] ?? 0);
  const floor = floorAt(deepest);
  const cut = repair.kind === 'pass' ? (repair.depth ?? 0) : 0;
  const total = floor + cut;
  const ln = Math.hypot(floor * sd[deepest]!, cut * Math.hypot(spread.common, spread.course)) / total;
  const left = (z: number): number => thickness - total * Math.exp(z * ln);
  return { p05: left(Q95), p50: thickness - total, p95: left(-Q95) };
}

/** The measured floor, and how passes cut onto it, in shops that may be: each draws a floor and a course for each pass. */
function floorShops(
  {
    depth,
    places,
    touched,
    law,
  }: {
    readonly depth: SeamDepth;
    readonly places: readonly number[];
    readonly touched: readonly number[];
    readonly law: RepairLaw;
  },
  { count, seed }: { readonly count: number; readonly seed: number },
): FloorShops {
  const stream = drawStream(seed);
  const fresh = seamStates(law.spread, [], places);
  const n = places.length;
  const floor = new Float64Array(count * n);
  for (let shop = 0; shop < count; shop += 1) {
    const course = depth.posterior.draw(stream);
    touched.forEach((i, k) => {
      floor[shop * n + k] = depth.median[i]! * Math.exp(course[i]!);
    });
  }
  const parts = Array.from({ length: PASSES_MOST }, () => {
    const cut = new Float64Array(count * n);
    for (let shop = 0; shop < count; shop += 1)
      cut.set(
        fresh.draw(stream).map((value) => Math.exp(value)),
        shop * n,
      );
    return cut;
  });
  const lift = Math.log(law.depth) + law.power * Math.log(law.travel);
  return {
    count,
    at: Float64Array.from(places),
    depth: floor,
    lift: new Float64Array(count).fill(lift),
    power: new Float64Array(count).fill(law.power),
    further: (pass) => parts[Math.min(pass, PASSES_MOST - 1)]!,
    gaugeError: new Float64Array(count),
  };
}
