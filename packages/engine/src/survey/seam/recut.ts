import { drawStream } from '../../numeric/index.ts';
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

/** A short pass that brings a shallow stretch to depth. */
export interface RecutPass {
  readonly kind: 'pass';
  /** Where the torch starts, run-in included [m]. */
  readonly from: number;
  /** Where it ends, run-out included [m]. */
  readonly to: number;
  /** Length of run-in and of run-out, each inside that [m]. */
  readonly ramp: number;
  /** Depth to take off [m]. */
  readonly depth: number;
  /** Travel [m/s]. */
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
    };

const DRAWS = 300;
const SEED = 71_993;
const TRIED = 40;
/** Chance below which a repair pass is no better than what is there [-]. */
const CHANCE_LEAST = 0.5;

/**
 * Plans the repair of a stretch that fails, from the floor as it was measured.
 *
 * The depth to take off is the one that most surely ends inside the band everywhere, run-in and run-out included.
 *
 * @param stretch - the stretch [record], one that fails
 * @param depth - the depth along the seam [record], from `fuseSeam`
 * @param band - depths that it must keep to [record], least below most
 * @param law - how a repair pass cuts [record], all values > 0
 * @returns a pass, or what else is done [record]
 * @source derived: the removal law about the measured floor
 * @example
 * const posterior = fuseSeam({ common: 0.01, course: 0.01, range: 0.25 }, [], [0, 0.1, 0.2, 0.3]);
 * const law = { depth: 0.01, travel: 0.01, power: 1.4, spread: { common: 0.04, course: 0.045, range: 0.25 }, plateMost: 0.02, plateChance: 0.99, travelLeast: 0.002, travelMost: 0.05, ramp: 0.01, density: 7850, width: 0.016 };
 * recutOf({ from: 0, to: 0.3, miss: 'shallow' }, { median: [0.008, 0.008, 0.008, 0.008], posterior }, { least: 0.01, most: 0.014 }, law).kind // => "pass"
 */
export function recutOf(
  stretch: Pick<Stretch, 'from' | 'to' | 'miss'>,
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
    return { kind: 'weld', from, to, over, weldMetal: over * law.width * (to - from) * law.density };
  }
  const missing = average((i) => Math.max(0, band.least - depthAt(i)));
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
  const stream = drawStream(SEED);
  const fresh = seamStates(
    law.spread,
    [],
    touched.map((i) => at[i]!),
  );
  const floors = Array.from({ length: DRAWS }, () => {
    const course = depth.posterior.draw(stream);
    const cut = fresh.draw(stream);
    return touched.map((i, k) => ({
      floor: depth.median[i]! * Math.exp(course[i]!),
      cut: Math.exp(cut[k]!),
    }));
  });
  const lowest = Math.min(...own.map(depthAt));
  const most = Math.max(band.most - lowest, 1e-4);
  let best: { take: number; reached: number; kept: number; plate: number } | undefined;
  for (let k = 1; k <= TRIED; k += 1) {
    const take = (most * k) / TRIED;
    let reached = 0;
    let kept = 0;
    let plate = 0;
    for (const floor of floors) {
      let shallow = false;
      let deep = false;
      let through = false;
      floor.forEach((each, j) => {
        const after = each.floor + share[j]! * take * each.cut;
        const inside = at[touched[j]!]! >= from - 1e-9 && at[touched[j]!]! <= to + 1e-9;
        if (inside && after < band.least) shallow = true;
        if (after > band.most) deep = true;
        if (after > law.plateMost) through = true;
      });
      if (!shallow) reached += 1;
      if (!deep) kept += 1;
      if (!through) plate += 1;
    }
    const found = { take, reached: reached / DRAWS, kept: kept / DRAWS, plate: plate / DRAWS };
    // a plate that may be cut through is no repair, whatever else it would bring
    if (best !== undefined && found.plate < law.plateChance) break;
    if (best === undefined || Math.min(found.reached, found.kept) > Math.min(best.reached, best.kept))
      best = found;
  }
  const { take, reached, kept, plate } = best!;
  if (plate < law.plateChance) {
    return {
      kind: 'none',
      from,
      to,
      missing,
      reason:
        'no pass would surely leave the plate its least thickness: grind it, and measure the plate left from behind',
    };
  }
  const travel = law.travel * (law.depth / take) ** (1 / law.power);
  if (travel > law.travelMost) {
    return {
      kind: 'grind',
      from,
      to,
      missing,
      reason:
        'the carriage cannot run fast enough to take so little off: grind it, or use a smaller electrode',
    };
  }
  if (travel < law.travelLeast) {
    return {
      kind: 'none',
      from,
      to,
      missing,
      reason: 'too much is missing for one repair pass: plan the stretch as a job of its own',
    };
  }
  if (Math.min(reached, kept) < CHANCE_LEAST) {
    return {
      kind: 'none',
      from,
      to,
      missing,
      reason:
        'no single pass would bring it into its limits with a chance above one half: measure it more closely first, or grind it',
    };
  }
  return {
    kind: 'pass',
    from: start,
    to: end,
    ramp: law.ramp,
    depth: take,
    travel,
    reached,
    notTooDeep: kept,
    plateKept: plate,
  };
}
