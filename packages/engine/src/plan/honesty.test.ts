import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Job, readJob } from '../job/index.ts';
import { metalOf } from '../material/index.ts';
import { processLimits, publishedBelief, type RemovalBelief } from '../removal/index.ts';
import { planJob } from './plan-job.ts';
import type { Plan } from './result.ts';
import { simulateShops } from './shop-simulator.test-support.ts';
import { testJob } from './test-job.test-support.ts';

const SHOPS = 1500;
/** Shops in which the planner counts what it states [-]. */
const STATED_FROM = 4000;
/** Standard errors by which a share may differ [-]. */
const ERRORS = 3;

function exampleJob(name: string): Job {
  const outcome = readJob(
    readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8'),
  );
  if (!outcome.ok) throw new Error(`examples/${name}.yaml does not read`);
  return outcome.value.job;
}

const half = (plus: string, minus = '0 mm') => ({ wanted: '8 mm', plus, minus });

/** Jobs of many kinds; `blind`: wide tolerance, so that one blind plan must do. */
const JOBS: readonly (readonly [string, 'blind' | 'any', Job])[] = [
  ['the long seam', 'any', exampleJob('penstock-seam')],
  ['the wash', 'any', exampleJob('casting-wash')],
  ['the pocket', 'any', exampleJob('defect-pocket')],
  ['a wide tolerance', 'blind', testJob({ plan: { gauge_stops: 'never' } }).job],
  [
    'an assurance of 80 %',
    'blind',
    testJob({ groove: { assurance: '80 %', depth: half('7 mm') }, plan: { gauge_stops: 'never' } }).job,
  ],
  [
    'a deep groove of several layers',
    'blind',
    testJob({
      groove: {
        depth: { wanted: '14 mm', plus: '16 mm', minus: '1 mm' },
        width: { least: '14 mm', most: '26 mm' },
      },
      plan: { gauge_stops: 'never' },
    }).job,
  ],
  [
    'a small plain electrode',
    'blind',
    testJob({
      kit: { electrodes: [{ diameter: '3/8 in', count: 90, kind: 'plain' }] },
      groove: {
        depth: { wanted: '7 mm', plus: '12 mm', minus: '1 mm' },
        width: { least: '8 mm', most: '20 mm' },
      },
    }).job,
  ],
  [
    'a large electrode held steep',
    'blind',
    testJob({
      kit: { electrodes: [{ diameter: '5/8 in', count: 90 }], push_angle: '60 deg' },
      groove: {
        depth: { wanted: '10 mm', plus: '25 mm', minus: '0 mm' },
        width: { least: '12 mm', most: '26 mm' },
      },
    }).job,
  ],
  [
    'a metal without rows of its own',
    'blind',
    testJob({
      plate: { material: 'austenitic_stainless', thickness: '50 mm' },
      groove: { assurance: '80 %', depth: half('25 mm') },
    }).job,
  ],
  [
    'two tracks',
    'any',
    testJob({
      groove: {
        floor_width: '8 mm',
        assurance: '85 %',
        depth: { wanted: '6 mm', plus: '14 mm', minus: '0 mm' },
        width: { least: '20 mm', most: '34 mm' },
      },
    }).job,
  ],
  [
    'a tight tolerance',
    'any',
    testJob({ groove: { depth: { wanted: '10 mm', plus: '4 mm', minus: '0.5 mm' } } }).job,
  ],
  ['an assurance of 99 %', 'any', testJob({ groove: { assurance: '99 %', depth: half('20 mm') } }).job],
];

function posteriorOf(job: Job): RemovalBelief {
  return publishedBelief(metalOf(job.plate.material, job.plate.composition), job.seam.position);
}

const planned = new Map<Job, readonly Plan[]>();

function plansOf(job: Job): readonly Plan[] {
  const known = planned.get(job);
  if (known !== undefined) return known;
  const posterior = posteriorOf(job);
  const result = planJob(job, posterior, [processLimits(posterior.meltingEnergy)]);
  if ('refusal' in result) throw new Error(result.refusal.summary);
  // The plan and those next to it: every further one only takes time.
  const plans = [result.plan, ...result.alternatives].slice(0, 3);
  planned.set(job, plans);
  return plans;
}

/** Standard error of a share counted in so many shops; a share near 0 or 1 keeps that of one shop in a few hundred. */
function standardError(share: number, shops: number): number {
  const inside = Math.min(0.997, Math.max(0.003, share));
  return Math.sqrt((inside * (1 - inside)) / shops);
}

/** Two counts of one share agree within the error of both. */
function expectAgreement(told: number, toldFrom: number, found: number, foundIn: number): void {
  const pooled = (told * toldFrom + found * foundIn) / (toldFrom + foundIn);
  const error = Math.hypot(standardError(pooled, toldFrom), standardError(pooled, foundIn));
  expect(Math.abs(told - found)).toBeLessThanOrEqual(ERRORS * error);
}

describe('The assurance told', { timeout: 30_000 }, () => {
  it.each(JOBS)('is what shops carrying the plan out find: %s', (_name, kind, job) => {
    const { assurance: wanted, ligament_assurance: ligamentWanted } = job.groove;
    const plans = plansOf(job);
    if (kind === 'blind') expect(plans[0]!.kind).toBe('blind');
    for (const plan of plans) {
      const seen = simulateShops(plan, job, posteriorOf(job), SHOPS, 20_261);
      // At least the wanted assurance, within the error of the count.
      expect(seen.depthReached).toBeGreaterThanOrEqual(wanted - ERRORS * standardError(wanted, SHOPS));
      expect(seen.notTooDeep).toBeGreaterThanOrEqual(wanted - ERRORS * standardError(wanted, SHOPS));
      expect(seen.ligamentKept).toBeGreaterThanOrEqual(
        ligamentWanted - ERRORS * standardError(ligamentWanted, SHOPS),
      );
      // What the plan states of itself, within the error of both counts.
      const stated = plan.assurance;
      for (const [told, found] of [
        [stated.depth_reached, seen.depthReached],
        [stated.not_too_deep, seen.notTooDeep],
        [stated.ligament_kept, seen.ligamentKept],
        [stated.width_in_band, seen.widthInBand],
      ] as const) {
        expectAgreement(told, STATED_FROM, found, SHOPS);
      }
      expect(stated.depth_reached).toBeGreaterThanOrEqual(wanted);
      expect(stated.not_too_deep).toBeGreaterThanOrEqual(wanted);
      expect(stated.ligament_kept).toBeGreaterThanOrEqual(ligamentWanted);
    }
  });

  it.each(JOBS.filter(([, kind]) => kind === 'blind'))('is not wasteful: %s', (_name, _kind, job) => {
    const plan = plansOf(job)[0]!;
    const travel = plan.passes[0]!.travel_mm_per_min / 60_000;
    // At the carriage's greatest travel nothing is left to be saved.
    expect(travel).toBeLessThan(0.999 * job.kit.travel.most);
    expect(plan.assurance.depth_reached).toBeLessThanOrEqual(job.groove.assurance + 0.03);
  });
});

describe('A row of a gauge table', { timeout: 30_000 }, () => {
  it.each(JOBS.slice(0, 3))('promises what the shops with such a reading find: %s', (_name, _kind, job) => {
    const [plan] = plansOf(job) as [Plan];
    expect(plan.gauge_stops.length).toBeGreaterThan(0);
    const seen = simulateShops(plan, job, posteriorOf(job), SHOPS, 4_711);
    let compared = 0;
    plan.gauge_stops.forEach((stop, index) => {
      stop.table.forEach((row, at) => {
        const { count, depthReached, notTooDeep } = seen.rows[index]![at]!;
        // Readings of one shop's tracks go together, so they count as one; rare readings say too little.
        const shops = count / plan.tracks;
        if (shops < 150 || row.action === 'ask') return;
        compared += 1;
        for (const [told, found] of [
          [row.depth_reached, depthReached / count],
          [row.not_too_deep, notTooDeep / count],
        ] as const) {
          expectAgreement(told, (shops * STATED_FROM) / SHOPS, found, shops);
        }
      });
    });
    expect(compared).toBeGreaterThan(0);
  });
});

describe('A number of gauge stations', { timeout: 30_000 }, () => {
  it('buys the assurance that is told', () => {
    const job = JOBS[2]![2];
    const [plan] = plansOf(job) as [Plan];
    for (const choice of plan.gauge_stops[0]!.stations_choice) {
      const gauged = {
        ...plan,
        gauge_stops: plan.gauge_stops.map((stop) => ({ ...stop, stations: choice.stations })),
      };
      const seen = simulateShops(gauged, job, posteriorOf(job), SHOPS, 815);
      for (const [told, found] of [
        [choice.depth_reached, seen.depthReached],
        [choice.not_too_deep, seen.notTooDeep],
      ] as const) {
        expectAgreement(told, STATED_FROM, found, SHOPS);
      }
    }
  });
});
