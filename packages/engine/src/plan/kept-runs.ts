import type { Course } from './make-tables.ts';
import type { RowsRead, RunDemand, RunOutcomes } from './run-plan.ts';
import type { ShopDraws } from './shop-draws.ts';
import type { TableTask } from './table-task.ts';

/** What came of running a way at a depth aimed at in a set of shops. */
export interface KeptRun {
  readonly course: Course;
  readonly outcomes: RunOutcomes;
  /** Rows that readings fell into, where they were wanted. */
  readonly rows: RowsRead | undefined;
}

/** Shops whose outcomes are kept, over all runs [-]: some forty megabytes. */
const SHOPS_MOST = 500_000;

const kept = new Map<string, KeptRun>();
let shopsKept = 0;

/** Sets of shops by the order in which they were met: what is kept belongs to one of them. */
const numbers = new WeakMap<ShopDraws, number>();
let met = 0;

/**
 * A run of a way in shops, kept from before where it was run already: with the kit's limits and without, after a change
 * of prices or of a kit that leaves the groove as it was. What is kept is what would be run anew.
 */
export function runKept(
  { rig, way, passLength, readingSd, required, most, assurance }: TableTask,
  { zoneWidth, seamRange, meltingEnergy }: RunDemand,
  logTarget: number,
  draws: ShopDraws,
  withRows: boolean,
  run: () => KeptRun,
): KeptRun {
  const number = numbers.get(draws) ?? ++met;
  numbers.set(draws, number);
  const { electrode, current, voltage, angleTerm, energyRange, pattern } = rig;
  const { tryout, shares, stops, stations } = way;
  const key = [
    number,
    withRows,
    logTarget,
    electrode.diameter,
    current,
    voltage,
    angleTerm,
    energyRange,
    pattern.tracks,
    pattern.spacing,
    tryout?.kind,
    tryout?.length,
    tryout?.stations,
    shares,
    stops,
    stations,
    passLength,
    readingSd,
    required,
    most,
    assurance,
    zoneWidth,
    seamRange,
    meltingEnergy,
  ].join(' ');
  const known = kept.get(key);
  const made = known ?? run();
  // The one used last goes to the end, so that the first is the one not used for longest.
  kept.delete(key);
  kept.set(key, made);
  if (known === undefined) shopsKept += draws.count;
  for (const [oldest, { outcomes }] of kept) {
    if (shopsKept <= SHOPS_MOST) break;
    kept.delete(oldest);
    shopsKept -= outcomes.deepest.length;
  }
  return made;
}
