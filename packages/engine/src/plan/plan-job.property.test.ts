import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Job, readJob } from '../job/index.ts';
import { sentenceText } from '../quantity/index.ts';
import { currentRangeOf, REMOVAL_SHARE_MOST } from '../removal/index.ts';
import type { PlanOutcome } from './outcome.ts';
import { planOf } from './plan-of.test-support.ts';
import { type TestJobChange, testDocument, testJob } from './test-job.test-support.ts';

/** Rounding that does not count [-]. */
const SLACK = 1e-9;

/** Even over the range: draws of doubles are even over their bits, so nearly all lie at the small end. */
const between = (min: number, max: number) =>
  fc.noBias(fc.integer({ min: 0, max: 10_000 })).map((part) => min + ((max - min) * part) / 10_000);
const millimetres = (min: number, max: number) => between(min, max).map((value) => `${value.toFixed(2)} mm`);
/** A range that takes in the middle; both its ends lie anywhere beyond. */
const range = (least: number, middle: number, most: number, unit: string) =>
  fc.record({
    least: between(least, middle).map((value) => `${value.toFixed(1)} ${unit}`),
    most: between(middle, most).map((value) => `${value.toFixed(1)} ${unit}`),
  });
const electrode = fc.record({
  diameter: fc.constantFrom('5/32 in', '1/4 in', '5/16 in', '3/8 in', '1/2 in', '5/8 in', '3/4 in', '11 mm'),
  kind: fc.constantFrom('plain', 'jointed'),
  count: fc.integer({ min: 0, max: 60 }),
});

/** Jobs over the whole range that the schema takes in, most of them odd. */
const anyJob = fc.record({
  seam: fc.record({
    length: millimetres(50, 30_000),
    position: fc.constantFrom('flat', 'horizontal', 'vertical_down', 'overhead'),
  }),
  plate: fc.record({
    thickness: millimetres(10, 120),
    material: fc.constantFrom('carbon_steel', 'austenitic_stainless', 'cast_iron', 'copper_alloy'),
  }),
  groove: fc.record(
    {
      shape: fc.constantFrom('u', 'pocket'),
      depth: fc.record({
        wanted: millimetres(2, 20),
        plus: millimetres(0, 30),
        minus: millimetres(0, 1.5),
      }),
      width: fc.tuple(between(4, 20), between(0, 40)).map(([least, more]) => ({
        least: `${least.toFixed(2)} mm`,
        most: `${(least + more).toFixed(2)} mm`,
      })),
      floor_width: millimetres(0, 10),
      root_radius_least: millimetres(0, 7),
      ligament_least: millimetres(0, 10),
      assurance: fc.constantFrom('50 %', '80 %', '95 %', '99.9 %'),
    },
    { requiredKeys: ['shape', 'depth', 'width'] },
  ),
  kit: fc.record({
    electrodes: fc.array(electrode, { minLength: 1, maxLength: 3 }),
    current: range(50, 500, 2000, 'A'),
    travel: range(10, 600, 4000, 'mm/min'),
    push_angle: fc.constantFrom('20 deg', '45 deg', '80 deg'),
    gauge: fc.record({ reading_sd: millimetres(0.01, 3), stations_most: fc.integer({ min: 1, max: 20 }) }),
  }),
  plan: fc.record({
    objective: fc.constantFrom('time', 'cost', 'heat'),
    gauge_stops: fc.constantFrom('allowed', 'never'),
    tracks_most: fc.integer({ min: 1, max: 4 }),
    layers_most: fc.integer({ min: 1, max: 5 }),
    seed: fc.integer({ min: 0, max: 2 ** 31 - 1 }),
  }),
});

/** Fails on the first number that is not finite, with its path. */
function expectFinite(value: unknown, path: string): void {
  if (typeof value === 'number') expect(Number.isFinite(value), path).toBe(true);
  else if (typeof value === 'object' && value !== null) {
    for (const [key, item] of Object.entries(value)) expectFinite(item, `${path}.${key}`);
  }
}

function expectSound(plan: PlanOutcome, job: Job): void {
  const { electrode, chances } = plan;
  const published = currentRangeOf(electrode)!;
  const within = (value: number, least: number, most: number): void => {
    expect(value).toBeGreaterThanOrEqual(least * (1 - SLACK));
    expect(value).toBeLessThanOrEqual(most * (1 + SLACK));
  };
  const { travel, current } = job.kit;
  for (const pass of plan.passes) {
    within(pass.current, Math.max(current.least, published.least), Math.min(current.most, published.most));
    within(pass.travel, travel.least, travel.most);
  }
  const tables = [plan.tryout?.table ?? [], ...plan.stops.map((stop) => stop.table)];
  for (const table of tables) {
    table.forEach((row, at) => {
      if (row.travel !== undefined) within(row.travel, travel.least, travel.most);
      expect(row.from).toBe(at === 0 ? 0 : table[at - 1]!.to);
      expect(row.travel !== undefined).toBe(row.action === 'run');
      // No row promises a depth without an interval, and none has a chance outside 0 to 1.
      expect(row.expect.p95).toBeGreaterThan(row.expect.p05);
      within(row.tooShallow, 0, 1);
      within(row.tooDeep, 0, 1);
    });
    if (table.length > 0) expect(table.at(-1)!.action).toBe('ask');
  }
  const power = plan.limits.find((limit) => limit.id === 'removal_power')!;
  const arcPower = plan.passes[0]!.voltage * plan.passes[0]!.current;
  expect(power.demand).toBeLessThanOrEqual((REMOVAL_SHARE_MOST * arcPower) / 1000 + SLACK);
  expect(chances.reached).toBeGreaterThanOrEqual(job.groove.assurance);
  expect(chances.notTooDeep).toBeGreaterThanOrEqual(job.groove.assurance);
  expect(chances.widthInBand).toBeGreaterThanOrEqual(job.groove.assurance);
  expect(chances.ligamentKept).toBeGreaterThanOrEqual(job.groove.ligament_assurance);
  expect(chances.joint).toBeLessThanOrEqual(Math.min(chances.reached, chances.notTooDeep) + SLACK);
  expect(plan.electrodesUsed.p90).toBeLessThanOrEqual(electrode.count);
  expect(plan.layers).toBeLessThanOrEqual(job.plan.layers_most);
  expect(plan.pattern.tracks).toBeLessThanOrEqual(job.plan.tracks_most);
  const { family, job: ofJob, pass, seam, gauge } = plan.doubt;
  expect(family + ofJob + pass + seam + gauge).toBeCloseTo(1, 9);
}

describe('Planning any job', { timeout: 120_000 }, () => {
  it('gives a sound plan or a refusal with a reason, all numbers finite', () => {
    let read = 0;
    let plans = 0;
    fc.assert(
      fc.property(anyJob, (change) => {
        const outcome = readJob(JSON.stringify(testDocument(change)));
        if (!outcome.ok) return;
        read += 1;
        const { job } = outcome.value;
        const result = planOf(job);
        expectFinite(result, 'result');
        if ('refusal' in result) {
          expect(sentenceText(result.refusal.summary, 'inch').length).toBeGreaterThan(20);
          expect(result.refusal.binding.length).toBeGreaterThan(0);
          return;
        }
        plans += 1;
        for (const plan of [result.plan, ...result.alternatives]) expectSound(plan, job);
      }),
      { seed: 5, numRuns: 24 },
    );
    // The jobs are odd but must not all be turned away before planning, nor all refused.
    expect(read).toBeGreaterThan(15);
    expect(plans).toBeGreaterThan(0);
  });

  it('gives sound plans for jobs that can be done', () => {
    let plans = 0;
    const doable = fc.record({
      depth: between(4, 16),
      plus: between(4, 25),
      length: fc.integer({ min: 200, max: 6000 }),
      diameter: fc.constantFrom('3/8 in', '1/2 in', '5/8 in'),
      seed: fc.integer({ min: 0, max: 1000 }),
    });
    fc.assert(
      fc.property(doable, ({ depth, plus, length, diameter, seed }) => {
        const { job } = testJob({
          seam: { length: `${length} mm` },
          plate: { thickness: '60 mm' },
          groove: {
            depth: { wanted: `${depth} mm`, plus: `${plus} mm`, minus: '0.5 mm' },
            width: { least: '8 mm', most: '40 mm' },
          },
          kit: { electrodes: [{ diameter, count: 200 }] },
          plan: { seed, tracks_most: 2 },
        });
        const result = planOf(job);
        expectFinite(result, 'result');
        if ('refusal' in result) return;
        plans += 1;
        for (const plan of [result.plan, ...result.alternatives]) expectSound(plan, job);
      }),
      { seed: 6, numRuns: 12 },
    );
    expect(plans).toBeGreaterThan(5);
  });
});

/** A job with gauging and trials allowed, and one thing of it eased. */
interface Eased {
  readonly name: string;
  readonly job: TestJobChange;
  readonly eased: TestJobChange;
}

const GROOVE = {
  depth: { wanted: '9 mm', plus: '4 mm', minus: '1 mm' },
  width: { least: '8 mm', most: '24 mm' },
};
const ELECTRODES = ['3/8 in', '1/2 in', '5/8 in'].map((diameter) => ({ diameter, count: 90, price_each: 3 }));
const EASED: readonly Eased[] = [
  ...['4 mm', '5 mm', '7 mm'].map((plus) => ({
    name: `${plus} and then 2 mm more above`,
    job: { groove: { ...GROOVE, depth: { ...GROOVE.depth, plus } } },
    eased: { groove: { ...GROOVE, depth: { ...GROOVE.depth, plus: `${Number.parseFloat(plus) + 2} mm` } } },
  })),
  {
    name: 'more tolerance below',
    job: { groove: GROOVE },
    eased: { groove: { ...GROOVE, depth: { ...GROOVE.depth, minus: '1.5 mm' } } },
  },
  {
    name: 'less assurance',
    job: { groove: { ...GROOVE, assurance: '97 %' } },
    eased: { groove: { ...GROOVE, assurance: '95 %' } },
  },
  ...[2, 3, 5].map((stations_most) => ({
    name: `${stations_most} stations, and then 7 more`,
    job: { groove: GROOVE, kit: { gauge: { stations_most } } },
    eased: { groove: GROOVE, kit: { gauge: { stations_most: stations_most + 7 } } },
  })),
  ...[1, 2, 3].map((layers_most) => ({
    name: `${layers_most} layers, and then one more`,
    job: { groove: GROOVE, plan: { layers_most } },
    eased: { groove: GROOVE, plan: { layers_most: layers_most + 1 } },
  })),
  {
    name: 'more tracks',
    job: { groove: { ...GROOVE, width: { least: '18 mm', most: '34 mm' } }, plan: { tracks_most: 2 } },
    eased: { groove: { ...GROOVE, width: { least: '18 mm', most: '34 mm' } }, plan: { tracks_most: 4 } },
  },
  {
    name: 'more electrodes to choose from',
    job: { groove: GROOVE, kit: { electrodes: ELECTRODES.slice(1, 2) } },
    eased: { groove: GROOVE, kit: { electrodes: ELECTRODES } },
  },
  {
    name: 'a stronger source',
    job: { groove: GROOVE, kit: { electrodes: ELECTRODES, current: { least: '300 A', most: '700 A' } } },
    eased: { groove: GROOVE, kit: { electrodes: ELECTRODES, current: { least: '300 A', most: '1100 A' } } },
  },
  {
    name: 'a longer trial',
    job: { groove: GROOVE, kit: { trial: { length_most: '100 mm' } } },
    eased: { groove: GROOVE, kit: { trial: { length_most: '500 mm' } } },
  },
  {
    name: 'a trial at all',
    job: { groove: GROOVE, kit: { trial: { on: 'none' } } },
    eased: { groove: GROOVE },
  },
];

/** What more freedom may cost at most: rounding of the solving [-]. */
const NEVER_MORE = 0.005;

describe('More freedom', { timeout: 60_000 }, () => {
  const merit = (change: TestJobChange, objective: 'time' | 'cost'): number => {
    const result = planOf(testJob({ ...change, plan: { ...change.plan, objective } }).job);
    if ('refusal' in result) return Number.POSITIVE_INFINITY;
    return objective === 'time' ? result.plan.jobTime.mean : result.plan.wholeCost.mean;
  };

  it.each(EASED)('never costs more: $name', ({ job, eased }) => {
    for (const objective of ['time', 'cost'] as const) {
      const before = merit(job, objective);
      expect(merit(eased, objective)).toBeLessThanOrEqual(before * (1 + NEVER_MORE));
    }
  });
});
