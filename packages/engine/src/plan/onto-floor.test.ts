import { describe, expect, it } from 'vitest';
import { metalOf } from '../material/index.ts';
import { drawStream } from '../numeric/index.ts';
import { publishedBelief } from '../removal/index.ts';
import type { FloorShops } from './floor-shops.ts';
import { planningBelief } from './law.ts';
import { type OntoFloorPlan, type OntoFloorTask, planOntoFloor } from './onto-floor.ts';
import { drawSeamCourses } from './seam-courses.ts';
import { drawShops, pathOf } from './shop-draws.ts';

const BELIEF = planningBelief(publishedBelief(metalOf('carbon_steel'), 'flat'));
const PLACES = Float64Array.from({ length: 25 }, (_, i) => 0.04 * i);
/** ln specific energy of the pass that was run: about 5 mm with an electrode of 12.7 mm. */
const RUN = -0.55;
const DIAMETER = 0.0127;

/**
 * A floor of one pass in shops that all know `known` of their own level: a simulator apart from the one that runs are
 * drawn with.
 */
function shopsWith(count: number, seed: number, known = 0.05): FloorShops {
  const draws = drawShops(BELIEF, count, seed);
  const mean = draws.level.reduce((sum, each) => sum + each, 0) / count;
  const sd = Math.sqrt(draws.level.reduce((sum, each) => sum + (each - mean) ** 2, 0) / count);
  const level = draws.level.map((each) => mean + ((each - mean) * known) / sd);
  const slope = draws.slope.map(() => BELIEF.depth[0]!.mean[1]!);
  const parts = (layer: number): Float64Array => {
    const courses = drawSeamCourses(PLACES, BELIEF.seamRange, 128, drawStream(seed + layer));
    const noise = draws.normals(layer);
    return Float64Array.from({ length: count * PLACES.length }, (_, i) => {
      const shop = Math.floor(i / PLACES.length);
      const course = courses[pathOf(layer, shop, 128) * PLACES.length + (i % PLACES.length)]!;
      return Math.exp(draws.passSd[shop]! * noise[shop]! + draws.seamSd[shop]! * course);
    });
  };
  const made = new Map<number, Float64Array>();
  const kept = (layer: number): Float64Array => {
    const own = made.get(layer) ?? parts(layer);
    made.set(layer, own);
    return own;
  };
  const first = kept(0);
  return {
    count,
    at: PLACES,
    depth: first.map((part, i) => {
      const shop = Math.floor(i / PLACES.length);
      return DIAMETER * Math.exp(level[shop]! + slope[shop]! * RUN) * part;
    }),
    // a travel of 20 mm/s has the specific energy of the pass that was run
    lift: level.map((each, shop) => Math.log(DIAMETER) + each + slope[shop]! * (RUN + Math.log(0.02))),
    power: slope,
    further: (pass) => kept(pass + 1),
    gaugeError: draws.normals(903),
  };
}

function task(changes: Partial<OntoFloorTask> = {}): OntoFloorTask {
  return {
    shops: shopsWith(512, 11),
    fair: shopsWith(1024, 4711),
    share: PLACES.map(() => 1),
    must: Array.from(PLACES, () => true),
    ...{ least: 0.0085, most: 0.0135, mostForLigament: 0.02, assurance: 0.95, ligamentAssurance: 0.99 },
    travel: { least: 0.003, most: 0.06 },
    ceiling: () => 0.02,
    passesMost: 2,
    effort: (passes, _travel, gauged) => passes + (gauged ? 0.5 : 0),
    ...changes,
  };
}

/** What a plan does in shops that it has never met: chances counted apart from the planner's own. */
function triedIn(
  plan: OntoFloorPlan,
  shops: FloorShops,
  { least, most }: OntoFloorTask,
  stations: readonly number[] = [],
) {
  let [reached, kept] = [0, 0];
  for (let shop = 0; shop < shops.count; shop += 1) {
    const floor = Array.from(PLACES, (_, i) => shops.depth[shop * PLACES.length + i]!);
    const cut = (pass: number, travel: number): void => {
      const middle = Math.exp(shops.lift[shop]!) * travel ** -shops.power[shop]!;
      floor.forEach((_, i) => {
        floor[i]! += middle * shops.further(pass)[shop * PLACES.length + i]!;
      });
    };
    for (let pass = 0; pass < plan.passesBefore; pass += 1) cut(pass, plan.travel!);
    let asks = false;
    if (plan.table.length > 0) {
      const read =
        stations.reduce((sum, i) => sum + floor[i]!, 0) / stations.length +
        (0.0003 / Math.sqrt(stations.length)) * shops.gaugeError[shop]!;
      const row = plan.table.find(({ from, to }) => read >= from && (to === undefined || read < to))!;
      asks = row.action === 'ask';
      for (let pass = plan.passesBefore; row.travel !== undefined && pass < plan.passes; pass += 1)
        cut(pass, row.travel);
    }
    if (!asks && Math.min(...floor) >= least) reached += 1;
    if (asks || Math.max(...floor) <= most) kept += 1;
  }
  return { reached: reached / shops.count, kept: kept / shops.count };
}

describe('passes onto a floor that is there', () => {
  it('are as sure in shops that the planner never met as they are told to be', () => {
    const asked = task();
    const plan = planOntoFloor(asked);
    expect(plan.meets).toBe(true);
    expect(plan).toMatchObject({ passes: 1, table: [] });
    const { reached, kept } = triedIn(plan, shopsWith(1500, 99), asked);
    // three standard errors of the two counts together
    expect(Math.abs(reached - plan.chances.reached)).toBeLessThan(0.03);
    expect(Math.abs(kept - plan.chances.notTooDeep)).toBeLessThan(0.03);
    expect(reached).toBeGreaterThan(0.93);
  });

  it('wait for a gauge where the shop is known too little to go on blind, and are then as sure as asked', () => {
    const stations = [3, 12, 21];
    const asked = task({
      shops: shopsWith(512, 11, 0.25),
      fair: shopsWith(1024, 4711, 0.25),
      gauge: { places: stations, readingSd: 0.0003 },
    });
    const without = planOntoFloor({ ...asked, gauge: undefined });
    expect(without.meets).toBe(false);
    const plan = planOntoFloor(asked);
    expect(plan.table.length).toBeGreaterThan(3);
    const travels = plan.table.flatMap(({ travel }) => travel ?? []);
    expect(travels).toEqual([...travels].sort((a, b) => a - b));
    expect(travels.at(-1)!).toBeGreaterThan(1.2 * travels[0]!);
    expect(plan.chances.reached).toBeGreaterThan(without.chances.reached);
    const { reached, kept } = triedIn(plan, shopsWith(1500, 99, 0.25), asked, stations);
    expect(Math.abs(reached - plan.chances.reached)).toBeLessThan(0.04);
    expect(Math.abs(kept - plan.chances.notTooDeep)).toBeLessThan(0.04);
  });

  it('are none where the floor is as it ought to be', () => {
    const plan = planOntoFloor(task({ least: 0.001, most: 0.02 }));
    expect(plan).toMatchObject({ passes: 0, travel: undefined, meets: true });
    expect(plan.after).toEqual(plan.before);
  });

  it('are told not to be sure enough where no travel is, and never run through the plate', () => {
    const plan = planOntoFloor(task({ least: 0.0098, most: 0.0102, mostForLigament: 0.0105 }));
    expect(plan.meets).toBe(false);
    expect(plan.chances.ligamentKept).toBeGreaterThan(0.97);
  });

  it('run slower over a shallower floor', () => {
    const asked = task();
    const shallower = (shops: FloorShops): FloorShops => ({
      ...shops,
      depth: shops.depth.map((each) => 0.8 * each),
    });
    const plan = planOntoFloor({ ...asked, shops: shallower(asked.shops), fair: shallower(asked.fair) });
    expect(plan.travel!).toBeLessThan(planOntoFloor(asked).travel!);
  });

  it('cut nothing where a run-in has not begun, and their whole depth where it is over', () => {
    const share = PLACES.map((_, i) => Math.min(1, i / 12));
    const must = Array.from(PLACES, (_, i) => i >= 12);
    const plan = planOntoFloor(task({ share, must, passesMost: 1 }));
    expect(plan.passes).toBe(1);
    // the run-in is no part of what must be reached, and no part of the mean
    expect(plan.after.p50).toBeGreaterThan(0.0085);
  });
});

describe('courses along the seam', () => {
  it('have variance 1 and the correlation of Matern 3/2 at even and uneven places', () => {
    const at = [0, 0.05, 0.3];
    const courses = drawSeamCourses(at, 0.25, 40_000, drawStream(3));
    const mean = (of: (course: number) => number): number =>
      Array.from({ length: 40_000 }, (_, c) => of(3 * c)).reduce((sum, each) => sum + each, 0) / 40_000;
    for (const [i, j] of [
      [0, 0],
      [2, 2],
      [0, 1],
      [1, 2],
      [0, 2],
    ] as const) {
      const r = (Math.sqrt(3) * Math.abs(at[i]! - at[j]!)) / 0.25;
      expect(mean((c) => courses[c + i]! * courses[c + j]!)).toBeCloseTo((1 + r) * Math.exp(-r), 1);
    }
  });
});
