import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Job, readJob } from '../job/index.ts';
import { currentRangeOf, processLimits, REMOVAL_SHARE_MOST } from '../removal/index.ts';
import { type PlanResult, planJob } from './plan-job.ts';
import type { Plan } from './result.ts';
import { posteriorOf } from './solve-task.test-support.ts';
import { testDocument, testJob } from './test-job.test-support.ts';

/** Rounding that does not count [-]. */
const SLACK = 1e-9;

function planOf(job: Job): PlanResult {
  const posterior = posteriorOf(job);
  return planJob(job, posterior, [processLimits(posterior.meltingEnergy)]);
}

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

function expectSound(plan: Plan, job: Job): void {
  const electrode = job.kit.electrodes.find(
    (each) => Math.abs(each.diameter * 1000 - plan.electrode_diameter_mm) < 1e-6 && each.count > 0,
  )!;
  const published = currentRangeOf(electrode)!;
  const within = (value: number, least: number, most: number): void => {
    expect(value).toBeGreaterThanOrEqual(least * (1 - SLACK));
    expect(value).toBeLessThanOrEqual(most * (1 + SLACK));
  };
  const { travel, current } = job.kit;
  for (const pass of plan.passes) {
    within(pass.current_A, Math.max(current.least, published.least), Math.min(current.most, published.most));
    within(pass.travel_mm_per_min, travel.least * 60_000, travel.most * 60_000);
  }
  for (const row of plan.gauge_stops.flatMap((stop) => stop.table)) {
    if (row.travel_mm_per_min !== null) {
      within(row.travel_mm_per_min, travel.least * 60_000, travel.most * 60_000);
    }
  }
  const arcPower = plan.passes[0]!.arc_voltage_V * plan.passes[0]!.current_A;
  const power = plan.limits.find((limit) => limit.id === 'removal_power')!;
  expect(power.demand).toBeLessThanOrEqual((REMOVAL_SHARE_MOST * arcPower) / 1000 + SLACK);
  expect(plan.assurance.depth_reached).toBeGreaterThanOrEqual(job.groove.assurance);
  expect(plan.assurance.not_too_deep).toBeGreaterThanOrEqual(job.groove.assurance);
  expect(plan.assurance.ligament_kept).toBeGreaterThanOrEqual(job.groove.ligament_assurance);
  expect(plan.electrodes_used.p90).toBeLessThanOrEqual(electrode.count);
  expect(plan.layers).toBeLessThanOrEqual(job.plan.layers_most);
  expect(plan.tracks).toBeLessThanOrEqual(job.plan.tracks_most);
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
          expect(result.refusal.summary.length).toBeGreaterThan(20);
          expect(result.refusal.binding.length).toBeGreaterThan(0);
          return;
        }
        plans += 1;
        for (const plan of [result.plan, ...result.alternatives]) expectSound(plan, job);
      }),
      { seed: 5, numRuns: 60 },
    );
    // The jobs are odd but must not all be turned away before planning, nor all refused.
    expect(read).toBeGreaterThan(40);
    expect(plans).toBeGreaterThan(5);
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
      { seed: 6, numRuns: 40 },
    );
    expect(plans).toBeGreaterThan(25);
  });
});

describe('What is asked', { timeout: 120_000 }, () => {
  const base = (change: object, plan: object): Job =>
    testJob({ groove: change, plan: { ...plan, gauge_stops: 'never' }, locks: { tracks: 1 } }).job;
  const bestTime = (result: PlanResult): number =>
    'plan' in result ? result.plan.job_time_s.p50 : Number.POSITIVE_INFINITY;
  const given = fc.record({
    wanted: between(5, 14),
    plus: between(2, 16),
    more: between(0.5, 6),
    seed: fc.integer({ min: 0, max: 1000 }),
  });

  it('never becomes impossible with a wider tolerance above', () => {
    let possible = 0;
    fc.assert(
      fc.property(given, ({ wanted, plus, more, seed }) => {
        const [narrow, wide] = [plus, plus + more].map((value) =>
          planOf(base({ depth: { wanted: `${wanted} mm`, plus: `${value} mm`, minus: '0 mm' } }, { seed })),
        ) as [PlanResult, PlanResult];
        if ('refusal' in narrow) return;
        possible += 1;
        expect('plan' in wide).toBe(true);
      }),
      { seed: 7, numRuns: 15 },
    );
    expect(possible).toBeGreaterThan(3);
  });

  it('is never quicker when it is to be surer', () => {
    let possible = 0;
    fc.assert(
      fc.property(given, fc.constantFrom([70, 85], [80, 95], [90, 97]), ({ wanted, plus, seed }, levels) => {
        const [looser, surer] = levels.map((level) =>
          bestTime(
            planOf(
              base(
                {
                  assurance: `${level} %`,
                  depth: { wanted: `${wanted} mm`, plus: `${plus + 6} mm`, minus: '0 mm' },
                },
                { seed },
              ),
            ),
          ),
        ) as [number, number];
        if (Number.isFinite(surer)) possible += 1;
        expect(surer).toBeGreaterThanOrEqual(looser * 0.999);
      }),
      { seed: 8, numRuns: 25 },
    );
    expect(possible).toBeGreaterThan(3);
  });
});
