import type { Issue, Outcome } from '../../issue/index.ts';
import { airPoint, regulatorIndex, withOpenBranches } from './air-point.ts';
import type { AirFitting, AirItem, AirRun, AirSupply } from './air-supply.ts';
import { type AirWish, checkWish, flowingAt } from './drawdown.ts';
import { boresOf } from './pass-item.ts';

/** Hoses of one kind in stock. */
export interface StockHose {
  readonly id: string;
  /** Bore [m]. */
  readonly bore: number;
  /** Length [m]. */
  readonly length: number;
  /** Absolute roughness of the wall, 0 for smooth [m]. */
  readonly roughness: number;
  readonly fittings: readonly AirFitting[] | 'unknown';
  /** How many there are [-]. */
  readonly count: number;
}

/** One hose to change. */
export interface HoseChange {
  /** Id of the hose to take out. */
  readonly out: string;
  /** Id of the stock hose to put in. */
  readonly in: string;
}

/** The shortest list of hose changes, or the best that stock can do. */
export interface HoseChanges {
  /** Whether the changes give the wanted flowing pressure. */
  readonly reached: boolean;
  /** What to change; empty where nothing needs to be, or nothing helps. */
  readonly changes: readonly HoseChange[];
  /** Flowing pressure without any change [Pa gauge]. */
  readonly before: number;
  /** Flowing pressure after the changes [Pa gauge]. */
  readonly after: number;
  /** Highest flowing pressure that any shorter list could give, stock counts set aside; undefined where nothing is shorter [Pa gauge]. */
  readonly shorterBest: number | undefined;
  /** Lists of changes that were solved [-]. */
  readonly listsTried: number;
  /** Lists ruled out by a bound, as parts of the search [-]. */
  readonly partsRuledOut: number;
}

/** Networks that one search may solve. */
const SOLVES_MOST = 20_000;

interface Search {
  readonly supply: AirSupply;
  readonly wish: AirWish;
  readonly receiver: number;
  readonly stock: readonly StockHose[];
  readonly hoses: readonly number[];
  /** For each hose, stock that reaches as far, the best alone first. */
  readonly fitting: ReadonlyMap<number, readonly number[]>;
  /** For each hose, one that no choice betters. */
  readonly ideal: ReadonlyMap<number, AirRun>;
  solves: number;
  ruledOut: number;
}

interface Found {
  readonly pressure: number;
  readonly swaps: ReadonlyMap<number, number>;
}

/**
 * The shortest list of hose changes from stock that restores a wanted flowing pressure.
 *
 * A stock hose may replace one at least as short. Only hoses before the point asked for are changed: those behind
 * a regulator do nothing for its pressure. Lists are searched by rising length, exactly; a part of the search is
 * left out only where a bound shows that it cannot reach: every hose still open given its best stock, counts set
 * aside. Among lists of one length, the highest pressure wins. At a stated receiver pressure, usually the cut-in.
 *
 * @param supply - the air supply [record], see AirSupply
 * @param wish - flowing pressure and where [record], pressure > 0
 * @param stock - hoses in stock [list], lengths and bores > 0
 * @param receiver - pressure in the receiver [Pa gauge], > 0
 * @returns the changes, with what shorter lists could give as proof [record]
 * @source exact search; the flow as in airPoint
 * @example
 * const hose = { kind: 'hose', id: 'hose', bore: 0.0095, length: 15, roughness: 1.5e-6, fittings: [] };
 * const supply = { atmosphere: 101325, temperature: 293.15, compressor: { delivery: [{ pressure: 8e5, freeAir: 0.02 }] }, receiver: { volume: 0.5, cutIn: 6e5, cutOut: 8e5 }, path: [hose], torch: { kind: 'conductance', conductance: 3e-8, criticalRatio: 0.5 } };
 * leastHoseChanges(supply, { pressure: 5.5e5, at: 'torch' }, [{ ...hose, id: 'wide', bore: 0.019, count: 1 }], 6e5).value.changes // => [{"out":"hose","in":"wide"}]
 */
export function leastHoseChanges(
  supply: AirSupply,
  wish: AirWish,
  stock: readonly StockHose[],
  receiver: number,
): Outcome<HoseChanges> {
  const wrong = [...checkWish(wish), ...checkStock(stock)];
  if (wrong.length > 0) return { ok: false, issues: wrong };
  const start = airPoint(supply, receiver);
  if (!start.ok) return start;
  const search = searchOf(withOpenBranches(supply), wish, stock, receiver);
  const wanted = (wish.pressure + supply.atmosphere) * (1 - 1e-9);
  const before = pressureWith(search, new Map());
  if (before >= wanted)
    return {
      ok: true,
      value: answer(search, { pressure: before, swaps: new Map() }, true, before, undefined),
    };
  let shorter = before;
  for (let size = 1; size <= search.hoses.length; size += 1) {
    const bound = { best: before };
    const found = bestOfSize(search, size, wanted, bound);
    if (found === 'too large') return tooLarge();
    if (found !== undefined) return { ok: true, value: answer(search, found, true, before, shorter) };
    shorter = Math.max(shorter, bound.best);
  }
  const best = bestReachable(search, before);
  if (best === 'too large') return tooLarge();
  return { ok: true, value: answer(search, best, false, before, shorter) };
}

function checkStock(stock: readonly StockHose[]): readonly Issue[] {
  return stock.flatMap((hose, i) => {
    const sound =
      hose.length > 0 &&
      hose.bore > 0 &&
      hose.roughness >= 0 &&
      Number.isInteger(hose.count) &&
      hose.count >= 0;
    if (sound && Number.isFinite(hose.length * hose.bore)) return [];
    const message = `The stock hose ${hose.id} has a length of ${hose.length} m, a bore of ${hose.bore} m and a count of ${hose.count}; lengths and bores above 0 and whole counts are needed.`;
    return [{ code: 'AIR_VALUE' as const, path: `stock[${i}]`, message }];
  });
}

function searchOf(supply: AirSupply, wish: AirWish, stock: readonly StockHose[], receiver: number): Search {
  const end = wish.at === 'torch' ? supply.path.length : regulatorIndex(supply.path);
  const hoses = supply.path.flatMap((item, i) => (i < end && item.kind === 'hose' ? [i] : []));
  const base: Search = {
    supply,
    wish,
    receiver: receiver + supply.atmosphere,
    stock,
    hoses,
    fitting: new Map(),
    ideal: new Map(),
    solves: 0,
    ruledOut: 0,
  };
  const fitting = new Map<number, readonly number[]>();
  const ideal = new Map<number, AirRun>();
  for (const at of hoses) {
    const own = supply.path[at] as AirRun;
    const able = stock.flatMap((hose, k) =>
      hose.count > 0 && hose.length >= own.length * (1 - 1e-9) ? [k] : [],
    );
    const placed = able.map((k) => replaced(own, stock[k]!));
    const alone = new Map(able.map((k, i) => [k, pressureWith(base, new Map([[at, placed[i]!]]))]));
    fitting.set(
      at,
      able.toSorted((a, b) => alone.get(b)! - alone.get(a)!),
    );
    ideal.set(at, idealOf([own, ...placed]));
  }
  return { ...base, fitting, ideal };
}

function replaced(hose: AirRun, { bore, length, roughness, fittings }: StockHose): AirRun {
  return { ...hose, bore, length, roughness, fittings };
}

/** Flowing pressure with some hoses replaced, by their place in the path. */
function pressureWith(search: Search, hoses: ReadonlyMap<number, AirRun>): number {
  search.solves += 1;
  const path = search.supply.path.map((item, i): AirItem => hoses.get(i) ?? item);
  return flowingAt({ ...search.supply, path }, search.wish.at, search.receiver);
}

/** The hoses that a list of changes puts in. */
function hosesOf({ supply, stock }: Search, swaps: ReadonlyMap<number, number>): Map<number, AirRun> {
  return new Map([...swaps].map(([at, k]) => [at, replaced(supply.path[at] as AirRun, stock[k]!)]));
}

/** Best list of exactly `size` changes that reaches the wanted pressure; raises `bound.best` to what was possible. */
function bestOfSize(
  search: Search,
  size: number,
  wanted: number,
  bound: { best: number },
): Found | 'too large' | undefined {
  let found: Found | undefined;
  const left = search.stock.map(({ count }) => count);
  const visit = (open: readonly number[], swaps: ReadonlyMap<number, number>): boolean => {
    if (search.solves > SOLVES_MOST) return false;
    if (swaps.size === size) {
      const pressure = pressureWith(search, hosesOf(search, swaps));
      bound.best = Math.max(bound.best, pressure);
      if (pressure >= wanted && pressure > (found?.pressure ?? 0)) found = { pressure, swaps };
      return true;
    }
    if (swaps.size + open.length < size) return true;
    // Every open hose as good as can be, more of them than may be changed: only too high.
    const ideal = open.map((at): [number, AirRun] => [at, search.ideal.get(at)!]);
    const highest = pressureWith(search, new Map([...hosesOf(search, swaps), ...ideal]));
    if (highest < wanted || highest <= (found?.pressure ?? 0)) {
      bound.best = Math.max(bound.best, Math.min(highest, wanted * (1 - 2e-9)));
      search.ruledOut += 1;
      return true;
    }
    const [at, ...rest] = open;
    for (const k of search.fitting.get(at!)!) {
      if (left[k] === 0) continue;
      left[k] = left[k]! - 1;
      const whole = visit(rest, new Map([...swaps, [at!, k]]));
      left[k] = left[k]! + 1;
      if (!whole) return false;
    }
    return visit(rest, swaps);
  };
  return visit(search.hoses, new Map()) ? found : 'too large';
}

/** A hose as good as the best of each property among what may hang at one place: no choice resists less. */
function idealOf(hoses: readonly AirRun[]): AirRun {
  return {
    ...hoses[0]!,
    bore: Math.max(...hoses.map(({ bore }) => bore)),
    length: Math.min(...hoses.map((hose) => boresOf(hose) * hose.bore)),
    roughness: Math.min(...hoses.map(({ roughness }) => roughness)),
    fittings: [],
  };
}

/** The highest pressure that stock can give with any number of changes. */
function bestReachable(search: Search, before: number): Found | 'too large' {
  let best: Found = { pressure: before, swaps: new Map() };
  for (let size = 1; size <= search.hoses.length; size += 1) {
    const found = bestOfSize(search, size, best.pressure * (1 + 1e-9), { best: before });
    if (found === 'too large') return found;
    if (found !== undefined) best = found;
  }
  return best;
}

function tooLarge(): Outcome<never> {
  const message = `The search for hose changes would have to solve more than ${SOLVES_MOST} networks; leave out stock hoses that are narrower or no longer than those in use.`;
  return { ok: false, issues: [{ code: 'SEARCH_TOO_LARGE', path: 'stock', message }] };
}

function answer(
  search: Search,
  found: Found,
  reached: boolean,
  before: number,
  shorter: number | undefined,
): HoseChanges {
  const gauge = (pressure: number): number => pressure - search.supply.atmosphere;
  return {
    reached,
    changes: [...found.swaps].map(([at, k]) => ({
      out: search.supply.path[at]!.id,
      in: search.stock[k]!.id,
    })),
    before: gauge(before),
    after: gauge(found.pressure),
    shorterBest: shorter === undefined ? undefined : gauge(shorter),
    listsTried: search.solves,
    partsRuledOut: search.ruledOut,
  };
}
