import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type ReadJob, readJob } from '../../job/index.ts';
import { type ReadKit, readKit } from '../../kit/index.ts';
import { arcWorkOfPlan, betterPlan } from '../../plan/index.ts';
import { sentenceText } from '../../quantity/index.ts';
import { type CostReport, statePlan } from '../../result/index.ts';
import { answerJob, planOnly } from '../job/answer-job.ts';
import { answerCost } from './answer-cost.ts';
import { tryCostChanges } from './answer-cost-changes.ts';
import { costChanges } from './cost-change.ts';

function example(name: string): string {
  return readFileSync(new URL(`../../../../../examples/${name}.yaml`, import.meta.url), 'utf8');
}

function jobOf(text: string): ReadJob {
  const read = readJob(text);
  if (!read.ok) throw new Error(read.issues[0]?.message);
  return read.value;
}

function kitOf(text: string): ReadKit {
  const read = readKit(text);
  if (!read.ok) throw new Error(read.issues[0]?.message);
  return read.value;
}

function reportOf(read: ReadJob, kit?: ReadKit): CostReport {
  const cost = answerCost(read, answerJob({ job: read, version: 'test', kit }));
  if (cost.kind !== 'cost') throw new Error(sentenceText(cost.says, 'metric'));
  return cost;
}

const seam = jobOf(example('penstock-seam'));
const kit = kitOf(example('yard-kit'));
const seamAnswer = answerJob({ job: seam, version: 'test', kit });

describe('the cost of the demo job', () => {
  const report = reportOf(seam, kit);

  it('is the same twice, to the last digit', () => {
    expect(JSON.stringify(reportOf(seam, kit))).toBe(JSON.stringify(report));
  });

  it('outweighs the gouging by the refill', () => {
    const shareOf = (step: string) => report.steps.find((each) => each.step === step)!.cost_share;
    expect(shareOf('refill')).toBeGreaterThan(0.5);
    expect(shareOf('arc')).toBeLessThan(0.1);
  });

  it('has parts that make up the whole, and a metre that is its part of the seam', () => {
    const total = (shares: readonly number[]) => shares.reduce((sum, share) => sum + share, 0);
    expect(total(report.steps.map((step) => step.time_share))).toBeCloseTo(1, 10);
    expect(total(report.steps.map((step) => step.cost_share))).toBeCloseTo(1, 10);
    expect(total(report.items.map((item) => item.cost_share))).toBeCloseTo(1, 10);
    expect(report.cost_per_m.p50 * report.seam_length_m).toBeCloseTo(report.cost.p50, 8);
  });

  it('counts the job time of the plan itself within a few per cent, step by step', () => {
    const { plan } = answerJob({ job: seam, version: 'test', kit });
    const steps = ['starts', 'arc', 'returns', 'electrode_changes', 'gauging'];
    const { spread } = seam.job.after;
    const slower = (spread.least + 1 + spread.most) / 3;
    const counted = report.steps
      .filter(({ step }) => steps.includes(step))
      .reduce((sum, { step, time_s }) => sum + time_s.mean / (step === 'arc' ? 1 : slower), 0);
    expect(counted / plan!.job_time_s.p50).toBeGreaterThan(0.95);
    expect(counted / plan!.job_time_s.p50).toBeLessThan(1.05);
  });

  it('tells more weld metal for every larger groove', () => {
    const of = (deeper: number, wider: number) =>
      report.extra.find((each) => each.deeper_mm === deeper && each.wider_mm === wider)!;
    expect(of(2, 0).weld_metal_kg).toBeGreaterThan(of(1, 0).weld_metal_kg);
    expect(of(0, 4).weld_metal_kg).toBeGreaterThan(of(0, 2).weld_metal_kg);
    expect(of(1, 2).cost).toBeGreaterThan(of(1, 0).cost);
    expect(of(1, 0).cost).toBeGreaterThan(0);
  });

  it('compares with the rates that the job states, and says of the others that they are assumed', () => {
    expect(Object.fromEntries(report.ways.map(({ way, rate }) => [way, rate]))).toEqual({
      planned: 'planned',
      manual_gouging: 'stated',
      grinding: 'assumed',
      chipping: 'stated',
      machining: 'assumed',
    });
  });

  it('tries changes by planning anew, one at a time', () => {
    const changes = [...tryCostChanges(seam, seamAnswer, report, kit)];
    expect(changes.map(({ id }) => id)).toEqual([
      'second_source',
      'larger_electrode',
      'wider_tolerance',
      'hired_compressor',
    ]);
    const replanned = changes.filter(({ outcome }) => outcome === 'replanned');
    expect(replanned.length).toBeGreaterThan(0);
    for (const change of replanned) {
      expect(change.cost! - change.cost_change!).toBeCloseTo(report.cost.p50, 8);
    }
    for (const change of changes) {
      if (change.outcome === 'replanned') continue;
      expect([change.cost, change.time_s, change.setting]).toEqual([null, null, null]);
    }
  });

  it('plans each change as the bench would, within the kit', () => {
    const { read, kit: other } = costChanges(seam, kit).find(({ id }) => id === 'hired_compressor')!;
    const whole = answerJob({ job: read!, version: 'test', kit: other });
    const alone = planOnly(read!, other);
    // What measuring is worth is told of the plan itself only.
    const stated = { ...statePlan(alone!), worth_measuring: whole.plan!.worth_measuring };
    expect(stated).toEqual(whole.plan);
  });

  it.each([
    ['penstock-seam', (text: string) => text.replace('most: 1200 A', 'most: 700 A')],
    ['defect-pocket', (text: string) => text],
  ])(
    'tells of every change what planning it from the start comes to, or the plan told: %s',
    (name, changed) => {
      const read = jobOf(changed(example(name)));
      const answer = answerJob({ job: read, version: 'test', kit });
      const told = answerCost(read, answer) as CostReport;
      const changes = [...tryCostChanges(read, answer, told, kit)];
      for (const { id, read: other, kit: own, hirePerDay } of costChanges(read, kit)) {
        const change = changes.find((each) => each.id === id)!;
        const { plan: before } = answer.basis!;
        const plan = betterPlan(other!.job, [planOnly(other!, own)!, before]);
        const cost = answerCost(
          other!,
          { basis: { plan, torchFlow: answer.basis?.torchFlow } },
          { hirePerDay },
        ) as CostReport;
        expect([id, change.setting?.current_A, change.cost, change.time_s]).toEqual([
          id,
          plan.passes[0]!.current,
          cost.cost.p50,
          cost.time_s.p50,
        ]);
      }
    },
  );

  it('pays for a hired compressor by whole days of gouging, without planning anew where the kit limits nothing', () => {
    const free = {
      ...seamAnswer,
      supply: { ...seamAnswer.supply!, time: { ...seamAnswer.supply!.time, limited_by: 'process' as const } },
    };
    const change = [...tryCostChanges(seam, free, report, kit)].find(({ id }) => id === 'hired_compressor')!;
    expect(change.time_change_s).toBe(0);
    const days = change.cost_change! / seam.job.after.hire.compressor_per_day!;
    const gouging = report.steps.slice(0, 9).reduce((sum, { time_s }) => sum + time_s.p90, 0);
    expect(gouging).toBeLessThan(seam.job.after.hire.shift);
    expect(days).toBeCloseTo(1, 1);
  });
});

describe('the cost of any job', () => {
  it('takes the flow of the torch from the kit where the job states none', () => {
    const priced = jobOf(example('defect-pocket').concat('after: { air: { price_per_m3: 0.05 } }\n'));
    const air = (report: CostReport) => report.items.find(({ part }) => part === 'air')!.cost.mean;
    const topics = (report: CostReport) => report.assumptions.map(({ topic }) => topic);
    expect(air(reportOf(priced))).toBe(0);
    expect(topics(reportOf(priced))).toContain('Air');
    expect(air(reportOf(priced, kit))).toBeGreaterThan(0);
    expect(topics(reportOf(priced, kit))).not.toContain('Air');
  });

  it('takes the waits of a heat report, unless the job states its own', () => {
    const wait = { least: 100, middle: 300, most: 900 };
    const heat = { passes: [{ wait_s: wait }, { wait_s: wait }] } as never;
    const cooling = (text: string, from?: never) => {
      const read = jobOf(text);
      const cost = answerCost(
        read,
        answerJob({ job: read, version: 'test' }),
        from === undefined ? {} : { heat: from },
      );
      return cost.kind === 'cost'
        ? cost.steps.find(({ step }) => step === 'cooling')!.time_s.p50
        : Number.NaN;
    };
    const plain = example('defect-pocket');
    expect(cooling(plain)).toBe(0);
    expect(cooling(plain, heat)).toBeGreaterThan(500);
    const stated = `${plain}after: { cooling_wait: 0 min }\n`;
    expect(cooling(stated, heat)).toBe(0);
  });

  it('is told to be missing its largest part where no labour rate is stated', () => {
    const read = jobOf(example('defect-pocket').replace(/labour_per_hour: [\d.]+/u, 'labour_per_hour: 0'));
    expect(reportOf(read).cautions[0]).toContain('No labour rate is stated');
  });

  it('is none without a plan, and says why', () => {
    const read = jobOf(example('penstock-seam').replace('ligament_least: 10 mm', 'ligament_least: 31 mm'));
    const answer = answerJob({ job: read, version: 'test' });
    expect(answer.plan).toBeUndefined();
    const cost = answerCost(read, answer);
    expect(cost).toMatchObject({ kind: 'no_plan' });
    expect(cost.kind === 'no_plan' && sentenceText(cost.says, 'metric')).toContain(
      sentenceText(answer.refusal!.summary, 'metric'),
    );
  });

  it.each([
    ['penstock-seam', false],
    ['casting-wash', true],
  ])(
    'counts a gauge reading for every station and track, and for every station of a trial: %s',
    (name, tried) => {
      const own = jobOf(example(name));
      const { plan, basis } = answerJob({ job: own, version: 'test' });
      const around = { airFlow: undefined, coolingTime: 0, hirePerDay: 0 };
      const work = arcWorkOfPlan(basis!.plan, own.job, around);
      const { gauge_time, trial_time } = own.job.rates;
      const atStops = plan!.gauge_stops.reduce((sum, stop) => sum + stop.stations * plan!.tracks, 0);
      expect(Boolean(plan!.trial)).toBe(tried);
      const readings = (plan!.trial?.stations.length ?? 0) + atStops;
      expect(readings).toBeGreaterThan(0);
      expect(work.gaugeTime).toBeCloseTo(readings * gauge_time + (tried ? trial_time : 0), 9);
      if (!tried) expect(work.setUpTime).toBe(2400);
    },
  );
});
