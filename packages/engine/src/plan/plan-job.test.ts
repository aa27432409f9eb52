import { describe, expect, it } from 'vitest';
import type { PlanOutcome } from './outcome.ts';
import { planned } from './plan-of.test-support.ts';
import { type TestJobChange, testJob } from './test-job.test-support.ts';
import type { AfterCostFunction } from './whole-cost.ts';

function allPlans(change: TestJobChange): readonly PlanOutcome[] {
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
      expect(plan.electrode.diameter * 1000).toBeCloseTo(millimetres, 9);
    }
  });

  it('keeps the current', () => {
    for (const plan of allPlans({ ...ROOMY, locks: { current: '820 A' } })) {
      expect(plan.passes.every((pass) => pass.current === 820)).toBe(true);
    }
  });

  it('keeps the travel of every pass', () => {
    for (const plan of allPlans({ ...ROOMY, locks: { travel: '30 in/min' } })) {
      for (const pass of plan.passes) expect(pass.travel * 60_000).toBeCloseTo(762, 6);
    }
  });

  it('keeps the tracks', () => {
    for (const plan of allPlans({ ...ROOMY, locks: { tracks: 2 } })) {
      expect(plan.pattern.tracks).toBe(2);
      expect(plan.passes.length).toBe(2 * plan.layers);
    }
  });

  it('keeps the track spacing', () => {
    for (const plan of allPlans({ ...ROOMY, locks: { tracks: 2, track_spacing: '9 mm' } })) {
      expect(plan.pattern.spacing).toBeCloseTo(0.009, 9);
      expect(plan.passes[1]!.offset - plan.passes[0]!.offset).toBeCloseTo(0.009, 9);
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
    const merits = [1, 2, 3, 4, 5].map(
      (seed) => planned(testJob({ ...ROOMY, plan: { seed } }).job).plan.wholeCost.mean,
    );
    expect(new Set(merits).size).toBeGreaterThan(1);
    expect(Math.max(...merits) / Math.min(...merits) - 1).toBeLessThan(0.02);
  });
});

describe('A plan', { timeout: 20_000 }, () => {
  const plans = allPlans(ROOMY);

  it('is no worse by the objective than any alternative, but for what sparing the electrode may cost', () => {
    for (const objective of ['time', 'cost', 'heat'] as const) {
      const { plan, alternatives } = planned(testJob({ ...ROOMY, plan: { objective } }).job);
      const merit = (each: PlanOutcome): number =>
        ({ time: each.jobTime.mean, cost: each.wholeCost.mean, heat: each.arcEnergy })[objective];
      // Heat is told as a median, and plans are ordered by means.
      const much = objective === 'heat' ? 1.08 : 1.03;
      for (const other of alternatives) expect(merit(plan)).toBeLessThanOrEqual(merit(other) * much);
    }
  });

  it('stands beside other electrodes and another way, though the search could end without them', () => {
    const { plan, alternatives } = planned(testJob({ ...ROOMY, plan: { objective: 'cost' } }).job);
    const all = [plan, ...alternatives];
    expect(new Set(all.map(({ electrode }) => electrode.diameter)).size).toBe(3);
    expect(new Set(all.map(({ ways }) => ways.join())).size).toBeGreaterThan(1);
    const cost = alternatives.map(({ wholeCost }) => wholeCost.mean);
    expect(Math.max(...cost)).toBeGreaterThan(plan.wholeCost.mean);
  });

  it('keeps below the top of the range of its electrode where that costs little', () => {
    const { plan } = planned(
      testJob({ ...ROOMY, seam: { length: '300 mm' }, plan: { objective: 'cost' } }).job,
    );
    const most = { 9.525: 600, 12.7: 1000, 15.875: 1200 }[
      Number((plan.electrode.diameter * 1000).toFixed(3))
    ]!;
    expect(plan.passes[0]!.current / most).toBeLessThan(0.951);
  });

  it('weighs the groove it leaves where filling it is dear', () => {
    const { job } = testJob({ ...ROOMY, plan: { objective: 'cost' } });
    const volumeCost: AfterCostFunction = ({ areaPerLength, seamLength }) => ({
      cost: areaPerLength * seamLength * 1e9,
      time: 0,
    });
    const arcOnly = planned(job).plan;
    const whole = planned(job, volumeCost);
    expect(arcOnly.wholeCost).toEqual(arcOnly.cost);
    expect(whole.plan.removed).toBeLessThan(arcOnly.removed);
  });

  it('numbers its passes in the order they are run, layer by layer, from left to right', () => {
    for (const plan of plans) {
      expect(plan.passes.length).toBe(plan.tryout?.kind === 'run_in' ? 3 : plan.pattern.tracks * plan.layers);
      if (plan.tryout?.kind === 'run_in') continue;
      plan.passes.forEach((pass, index) => {
        expect(pass.number).toBe(index + 1);
        expect(pass.layer).toBe(Math.floor(index / plan.pattern.tracks) + 1);
        expect(pass.track).toBe((index % plan.pattern.tracks) + 1);
      });
      expect(plan.passes.reduce((sum, pass) => sum + pass.offset, 0)).toBeCloseTo(0, 9);
    }
  });

  it('has no hard limit that fails', () => {
    for (const plan of plans) {
      expect(plan.limits.length).toBeGreaterThan(10);
      expect(plan.limits.filter((limit) => limit.hard && limit.verdict === 'fails')).toEqual([]);
    }
  });

  it('is run blind where the tolerance is wide, and tried or gauged first where it is not', () => {
    const wide = allPlans({
      groove: { depth: { wanted: '8 mm', plus: '16 mm', minus: '1 mm' } },
      plan: { objective: 'time' },
    });
    expect(wide[0]!.ways).toEqual(['blind']);
    expect(wide[0]!.tryout).toBeUndefined();
    const tight = allPlans({ groove: { depth: { wanted: '10 mm', plus: '5 mm', minus: '0.5 mm' } } });
    expect(tight[0]!.ways).not.toContain('blind');
    for (const plan of [...wide, ...tight]) {
      expect(plan.stops.length > 0).toBe(plan.ways.includes('layers'));
      expect(plan.tryout?.kind).toBe(plan.ways.find((way) => way === 'trial' || way === 'run_in'));
      expect(plan.passes.some((pass) => pass.setByGauge)).toBe(!plan.ways.includes('blind'));
      // what one reading is good to, with a trial and no stop as well
      for (const cut of [...(plan.tryout === undefined ? [] : [plan.tryout]), ...plan.stops])
        expect(cut.readingSd).toBe(0.4e-3);
    }
  });

  it('is run blind where the energy balance lets no pass go too deep, as a search of every set-up says', () => {
    const { plan } = planned(
      testJob({
        seam: { length: '300 mm' },
        groove: {
          depth: { wanted: '9 mm', plus: '8 mm', minus: '1 mm' },
          width: { least: '8 mm', most: '24 mm' },
          ligament_least: '0 mm',
        },
        kit: {
          electrodes: ['3/8 in', '1/2 in'].map((diameter) => ({ diameter, count: 50, price_each: 3 })),
          current: { least: '500 A', most: '1100 A' },
          gauge: { stations_most: 4 },
        },
        plan: { objective: 'time', tracks_most: 1, layers_most: 2, seed: 1 },
      }).job,
    );
    expect(plan.ways).toEqual(['blind']);
    // The quickest of all set-ups on a fine grid, run by code of its own, takes 87.5 s.
    expect(Math.abs(plan.jobTime.mean / 87.5 - 1)).toBeLessThan(0.02);
  });

  it('has travels that rise with the reading, and a table that ends where the drawing does', () => {
    const [plan] = allPlans({
      groove: { depth: { wanted: '10 mm', plus: '4 mm', minus: '1.5 mm' } },
      kit: { trial: { on: 'none' } },
      locks: { layers: 2 },
    });
    const [stop] = plan!.stops;
    const travels = stop!.table.flatMap((row) => row.travel ?? []);
    expect(travels.length).toBeGreaterThan(3);
    expect(travels).toEqual([...travels].sort((a, b) => a - b));
    const last = stop!.table.at(-1)!;
    expect(last.action).toBe('ask');
    expect(last.from).toBeCloseTo(0.014, 9);
  });

  it('pays for no returns of the carriage round a girth', () => {
    const straight = planned(
      testJob({
        seam: { length: '2 m' },
        locks: { layers: 2 },
        plan: { gauge_stops: 'never', objective: 'time' },
      }).job,
    );
    const girth = planned(
      testJob({
        seam: { length: '2 m', path: 'girth', diameter: '636.62 mm' },
        locks: { layers: 2 },
        plan: { gauge_stops: 'never', objective: 'time' },
      }).job,
    );
    // 2 m at the usual 3 m/min.
    expect(straight.plan.jobTime.mean - girth.plan.jobTime.mean).toBeGreaterThan(38);
    expect(straight.plan.jobTime.mean - girth.plan.jobTime.mean).toBeLessThan(52);
  });

  it('says what measuring is worth, and never that it costs', () => {
    const { plan } = planned(
      testJob({ groove: { depth: { wanted: '10 mm', plus: '5 mm', minus: '0.5 mm' } } }).job,
    );
    expect(plan.worthMeasuring.map(({ what }) => what)).toContain('trial_known');
    for (const each of plan.worthMeasuring) expect(each.cost).toBeGreaterThanOrEqual(0);
  });
});
