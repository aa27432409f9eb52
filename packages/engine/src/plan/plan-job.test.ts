import { describe, expect, it } from 'vitest';
import type { Job } from '../job/index.ts';
import { processLimits } from '../removal/index.ts';
import { planJob } from './plan-job.ts';
import type { Plan } from './result.ts';
import { posteriorOf } from './solve-task.test-support.ts';
import { type TestJobChange, testJob } from './test-job.test-support.ts';
import type { AfterCostFunction } from './whole-cost.ts';

function planned(job: Job, afterCost?: AfterCostFunction): { plan: Plan; alternatives: readonly Plan[] } {
  const posterior = posteriorOf(job);
  const result = planJob(job, posterior, [processLimits(posterior.meltingEnergy)], afterCost);
  if ('refusal' in result) throw new Error(result.refusal.summary);
  return result;
}

function allPlans(change: TestJobChange): readonly Plan[] {
  const { plan, alternatives } = planned(testJob(change).job);
  return [plan, ...alternatives];
}

/** A groove that several electrodes and numbers of tracks can make. */
const ROOMY: TestJobChange = {
  groove: {
    depth: { wanted: '8 mm', plus: '20 mm', minus: '1 mm' },
    width: { least: '10 mm', most: '34 mm' },
  },
  kit: {
    electrodes: [
      { diameter: '3/8 in', count: 90 },
      { diameter: '1/2 in', count: 60 },
      { diameter: '5/8 in', count: 60 },
    ],
  },
};

describe('A locked value', { timeout: 20_000 }, () => {
  it.each(['3/8 in', '1/2 in', '5/8 in'])('keeps the electrode: %s', (text) => {
    const millimetres = { '3/8 in': 9.525, '1/2 in': 12.7, '5/8 in': 15.875 }[text]!;
    for (const plan of allPlans({ ...ROOMY, locks: { electrode_diameter: text } })) {
      expect(plan.electrode_diameter_mm).toBeCloseTo(millimetres, 9);
    }
  });

  it('keeps the current', () => {
    for (const plan of allPlans({ ...ROOMY, locks: { current: '820 A' } })) {
      expect(plan.passes.every((pass) => pass.current_A === 820)).toBe(true);
    }
  });

  it('keeps the travel of every pass', () => {
    for (const plan of allPlans({ ...ROOMY, locks: { travel: '30 in/min' } })) {
      for (const pass of plan.passes) expect(pass.travel_mm_per_min).toBeCloseTo(762, 6);
    }
  });

  it('keeps the tracks', () => {
    for (const plan of allPlans({ ...ROOMY, locks: { tracks: 2 } })) {
      expect(plan.tracks).toBe(2);
      expect(plan.passes.length).toBe(2 * plan.layers);
    }
  });

  it('keeps the track spacing', () => {
    for (const plan of allPlans({ ...ROOMY, locks: { tracks: 2, track_spacing: '9 mm' } })) {
      expect(plan.track_spacing_mm).toBeCloseTo(9, 9);
      expect(plan.passes[1]!.offset_mm - plan.passes[0]!.offset_mm).toBeCloseTo(9, 9);
    }
  });

  it('keeps the layers', () => {
    for (const plan of allPlans({ ...ROOMY, locks: { layers: 3 } })) {
      expect(plan.layers).toBe(3);
      expect(Math.max(...plan.passes.map((pass) => pass.layer))).toBe(3);
    }
  });
});

describe('The seed', { timeout: 20_000 }, () => {
  it('gives the same bytes again', () => {
    const { job } = testJob(ROOMY);
    expect(JSON.stringify(planned(job))).toBe(JSON.stringify(planned(job)));
  });

  it('changes little when it is another one', () => {
    const change = { ...ROOMY, kit: {}, locks: { layers: 1 } };
    const [one, other] = [1, 2].map((seed) => planned(testJob({ ...change, plan: { seed } }).job).plan) as [
      Plan,
      Plan,
    ];
    expect(other.passes[0]!.travel_mm_per_min).not.toBe(one.passes[0]!.travel_mm_per_min);
    const ratio = other.passes[0]!.travel_mm_per_min / one.passes[0]!.travel_mm_per_min;
    expect(Math.abs(ratio - 1)).toBeLessThan(0.05);
    expect(Math.abs(other.floor_depth_mm.p50 - one.floor_depth_mm.p50)).toBeLessThan(0.6);
  });
});

describe('A plan', { timeout: 20_000 }, () => {
  const plans = allPlans(ROOMY);

  it('is no worse by the objective than any alternative', () => {
    for (const objective of ['time', 'cost', 'heat'] as const) {
      const { plan, alternatives } = planned(testJob({ ...ROOMY, plan: { objective } }).job);
      const merit = (each: Plan): number =>
        ({ time: each.job_time_s.p50, cost: each.cost.p50, heat: each.arc_energy_kJ })[objective];
      // The objective is a mean over the shops, told are medians: they differ a little.
      for (const other of alternatives) expect(merit(plan)).toBeLessThanOrEqual(merit(other) * 1.03);
    }
  });

  it('weighs the groove it leaves where filling it is dear', () => {
    const { job } = testJob({ ...ROOMY, plan: { objective: 'cost' } });
    const volumeCost: AfterCostFunction = ({ areaPerLength, seamLength }) => ({
      cost: areaPerLength * seamLength * 1e9,
      time: 0,
    });
    const arcOnly = planned(job).plan;
    const whole = planned(job, volumeCost);
    expect(arcOnly.whole_cost).toEqual(arcOnly.cost);
    expect(whole.plan.removed_mm3_per_mm).toBeLessThan(arcOnly.removed_mm3_per_mm);
    const perLength = (whole.plan.whole_cost.p50 - whole.plan.cost.p50) / (job.seam.length * 1e3);
    expect(perLength / whole.plan.removed_mm3_per_mm).toBeCloseTo(1, 1);
    for (const other of whole.alternatives)
      expect(whole.plan.whole_cost.p50).toBeLessThanOrEqual(other.whole_cost.p50 * 1.03);
  });

  it('numbers its passes in the order they are run, layer by layer, from left to right', () => {
    for (const plan of plans) {
      expect(plan.passes.length).toBe(plan.tracks * plan.layers);
      plan.passes.forEach((pass, index) => {
        expect(pass.number).toBe(index + 1);
        expect(pass.layer).toBe(Math.floor(index / plan.tracks) + 1);
        expect(pass.track).toBe((index % plan.tracks) + 1);
      });
      expect(plan.passes.reduce((sum, pass) => sum + pass.offset_mm, 0)).toBeCloseTo(0, 9);
    }
  });

  it('has no hard limit that fails', () => {
    for (const plan of plans) {
      expect(plan.limits.length).toBeGreaterThan(10);
      expect(plan.limits.filter((limit) => limit.hard && limit.verdict === 'fails')).toEqual([]);
    }
  });

  it('has gauge stops exactly when it is called gauge and adjust', () => {
    const tight = allPlans({ groove: { depth: { wanted: '10 mm', plus: '4 mm', minus: '0.5 mm' } } });
    expect(tight[0]!.kind).toBe('gauge_and_adjust');
    for (const plan of [...plans, ...tight]) {
      expect(plan.gauge_stops.length > 0).toBe(plan.kind === 'gauge_and_adjust');
      expect(plan.passes.some((pass) => pass.set_by_gauge)).toBe(plan.kind === 'gauge_and_adjust');
    }
  });

  it('has gauge tables without gap or overlap, with a travel exactly where a pass is run', () => {
    const tight = allPlans({ groove: { depth: { wanted: '10 mm', plus: '4 mm', minus: '0.5 mm' } } });
    for (const stop of tight.flatMap((plan) => plan.gauge_stops)) {
      expect(stop.table[0]!.reading_from_mm).toBe(0);
      expect(stop.table.at(-1)!.reading_to_mm).toBeNull();
      expect(stop.station_positions_mm.length).toBe(stop.stations);
      stop.table.forEach((row, index) => {
        if (index > 0) expect(row.reading_from_mm).toBe(stop.table[index - 1]!.reading_to_mm);
        expect(row.travel_mm_per_min !== null).toBe(row.action === 'run');
      });
      const actions = stop.table.map((row) => ['run', 'done', 'ask'].indexOf(row.action));
      expect(actions).toEqual([...actions].sort((a, b) => a - b));
      expect(actions.at(-1)).toBeGreaterThan(0);
      const travels = stop.table.flatMap((row) => row.travel_mm_per_min ?? []);
      expect(travels).toEqual([...travels].sort((a, b) => a - b));
    }
  });
});
