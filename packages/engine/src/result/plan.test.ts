import { expect, it } from 'vitest';
import type { PlanOutcome } from '../plan/index.ts';
import { type EdgeUnit, fromUnit } from '../quantity/index.ts';
import { planSchema, statePlan } from './plan.ts';

let last = 0;
/** A number that stands nowhere else in the outcome, so that a mix-up shows. */
const next = (): number => {
  last += 1;
  return 0.001 * last;
};
const percentiles = () => ({ p05: next(), p50: next(), p95: next() });
const expectation = () => ({ mean: next(), p50: next(), p90: next() });
const row = (action: 'run' | 'done') => ({
  from: next(),
  to: next(),
  action,
  inBand: action === 'done',
  travel: next(),
  deepenTravel: next(),
  travelFactor: next(),
  expect: percentiles(),
  tooShallow: next(),
  tooDeep: next(),
});
const OUTCOME: PlanOutcome = {
  ways: ['trial', 'layers'],
  dominated: false,
  electrode: { diameter: next(), kind: 'jointed', length: next(), count: 4, price: next() } as never,
  pattern: { tracks: 2, spacing: next() } as never,
  layers: 3,
  passLength: next(),
  passes: [1, 2].map((number) => ({
    number,
    layer: number,
    track: 1,
    offset: next(),
    from: next(),
    to: next(),
    current: next(),
    voltage: next(),
    pushAngle: next(),
    travel: next(),
    setByGauge: true,
    depth: percentiles(),
    dwell: next(),
  })),
  floorDepth: percentiles(),
  leastDepth: percentiles(),
  width: percentiles(),
  rootRadius: next(),
  wallAngle: next(),
  cuspHeight: next(),
  ligament: { p05: next(), p50: next() },
  chances: {
    reached: next(),
    notTooDeep: next(),
    widthInBand: next(),
    ligamentKept: next(),
    joint: next(),
    standardError: next(),
  } as never,
  arcTime: expectation(),
  jobTime: expectation(),
  cost: expectation(),
  wholeCost: expectation(),
  electrodesUsed: expectation(),
  currency: 'EUR',
  arcEnergy: next(),
  removed: next(),
  lossLength: next(),
  tryout: {
    kind: 'trial',
    on: 'scrap',
    length: next(),
    current: next(),
    travel: next(),
    depth: percentiles(),
    stations: [next(), next()],
    readingSd: next(),
    table: [row('run'), row('done')],
  },
  stops: [{ afterLayer: 1, stations: [next()], readingSd: next(), table: [row('run')] }],
  changes: [{ pass: 1, at: next() }],
  limits: [],
  section: { offset: [next()], p05: [next()], p50: [next()], p95: [next()] },
  doubt: { family: next(), job: next(), pass: next(), seam: next(), gauge: next() },
  worthMeasuring: [{ what: 'trial', cost: next(), time: next() }],
};

/** Where a stated thing has another name than its source, or stands elsewhere. */
const SOURCES: readonly (readonly [RegExp, string])[] = [
  [/^electrode_diameter/u, 'electrode.diameter'],
  [/^track_spacing/u, 'pattern.spacing'],
  [/^tracks$/u, 'pattern.tracks'],
  // the key that other programs rely on carries no unit
  [/^trial\.stations\./u, 'tryout.stations_mm.'],
  [/^trial\./u, 'tryout.'],
  [/^gauge_stops\./u, 'stops.'],
  [/^electrode_changes\./u, 'changes.'],
  [/^worth_measuring\.(\d+)\.saves_/u, 'worthMeasuring.$1.'],
  [/station_positions_mm/u, 'stations_mm'],
  [/(table\.\d+\.)reading_(from|to)/u, '$1$2'],
  [/expected_depth_mm/u, 'expect_mm'],
  [/section\.depth_/u, 'section.'],
  [/^assurance\.depth_reached/u, 'chances.reached'],
  [/^assurance\./u, 'chances.'],
  [/arc_voltage/u, 'voltage'],
];
/** What is counted from its source, not copied. */
const COUNTED = /^(gauge_stops\.\d+\.(stations|stations_choice)|.*\.(depth_reached|not_too_deep))$/u;

const UNIT = /_(mm3_per_mm|mm_per_min|mm|kJ|deg|A|V|s)$/u;
const camel = (path: string): string =>
  path.replace(/_([a-z])/gu, (_, letter: string) => letter.toUpperCase());

function leavesOf(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, each]) => leavesOf(each, path === '' ? key : `${path}.${key}`));
}

/** Splits `passes.0.depth_mm.p50` into the path without its unit and the unit that the last unit-carrying key names. */
function unitless(path: string): { readonly bare: string; readonly unit: EdgeUnit | undefined } {
  let unit: EdgeUnit | undefined;
  const bare = path
    .split('.')
    .map((key) =>
      key.replace(UNIT, (_, found: EdgeUnit) => {
        unit = found;
        return '';
      }),
    )
    .join('.');
  return { bare, unit };
}

it('states every number of a plan in the unit of its key, each from its own source', () => {
  const sources = new Map(leavesOf(OUTCOME));
  const stated = statePlan(OUTCOME);
  expect(planSchema.safeParse(stated).error).toBeUndefined();
  const unlike = leavesOf(stated).flatMap(([path, value]) => {
    const named = SOURCES.reduce((found, [from, to]) => found.replace(from, to), path);
    const { bare, unit } = unitless(named);
    const source = sources.get(camel(bare));
    if (source === undefined) return COUNTED.test(path) ? [] : [`${path}: no source ${camel(bare)}`];
    const back = unit === undefined ? value : fromUnit(value, unit);
    return Math.abs(back - source) <= 1e-12 * Math.abs(source) ? [] : [`${path}: ${back} for ${source}`];
  });
  expect(unlike).toEqual([]);
});

it('counts a chance of the whole from that of its opposite, and the stations of a stop', () => {
  const { gauge_stops, trial, kind } = statePlan(OUTCOME);
  expect(kind).toBe('gauge_and_adjust');
  expect(gauge_stops[0]!.stations).toBe(1);
  const [first] = trial!.table;
  expect(first!.depth_reached).toBe(1 - first!.too_shallow);
  expect(first!.not_too_deep).toBe(1 - first!.too_deep);
  expect(statePlan({ ...OUTCOME, tryout: undefined, stops: [] }).kind).toBe('blind');
  expect(statePlan({ ...OUTCOME, tryout: { ...OUTCOME.tryout!, kind: 'run_in' } })).toHaveProperty('run_in');
});
