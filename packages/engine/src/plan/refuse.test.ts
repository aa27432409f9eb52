import { describe, expect, it } from 'vitest';
import type { ReadJob } from '../job/index.ts';
import { sentenceText } from '../quantity/index.ts';
import type { Binding } from './outcome.ts';
import type { PlanResult } from './plan-job.ts';
import { planOf as planOfJob } from './plan-of.test-support.ts';
import { type TestJobChange, testJob } from './test-job.test-support.ts';

function planOf({ job }: ReadJob): PlanResult {
  return planOfJob(job);
}

const electrode = (diameter: string, count = 60) => ({ diameter, count, price_each: 3.4 });

/** A job that is refused, the constraint that must be named, and the job's text once its remedy is taken up. */
interface Case {
  readonly name: string;
  readonly change: TestJobChange;
  readonly constraint: string;
  readonly eased: (binding: Binding) => TestJobChange;
}

const CASES: readonly Case[] = [
  {
    name: 'too weak a source',
    change: { kit: { current: { least: '100 A', most: '400 A' } } },
    constraint: 'source_current_most',
    eased: ({ demand }) => ({ kit: { current: { least: '100 A', most: `${demand} A` } } }),
  },
  {
    name: 'a source that does not go low enough',
    change: { kit: { current: { least: '1100 A', most: '1600 A' } } },
    constraint: 'source_current_least',
    eased: ({ demand }) => ({ kit: { current: { least: `${demand} A`, most: '1600 A' } } }),
  },
  {
    name: 'no electrode of a fitting size',
    change: { kit: { current: { least: '100 A', most: '400 A' } } },
    constraint: 'electrode_diameter',
    eased: ({ demand }) => ({
      kit: {
        current: { least: '100 A', most: '400 A' },
        electrodes: [electrode('1/2 in'), electrode(`${demand} mm`, 1000)],
      },
    }),
  },
  {
    name: 'a groove narrower than any pass',
    change: { groove: { width: { least: '4 mm', most: '8 mm' } } },
    constraint: 'width_most',
    eased: ({ demand }) => ({ groove: { width: { least: '4 mm', most: `${demand} mm` } } }),
  },
  {
    name: 'a groove wider than all tracks',
    change: { groove: { width: { least: '100 mm', most: '110 mm' } }, plan: { tracks_most: 2 } },
    constraint: 'width_least',
    eased: ({ demand }) => ({
      groove: { width: { least: `${demand} mm`, most: '110 mm' } },
      plan: { tracks_most: 2 },
    }),
  },
  {
    name: 'a tolerance too tight without gauging',
    change: {
      groove: { depth: { wanted: '8 mm', plus: '6 mm', minus: '0 mm' } },
      plan: { gauge_stops: 'never' },
    },
    constraint: 'gauge_stops',
    eased: () => ({ groove: { depth: { wanted: '8 mm', plus: '6 mm', minus: '0 mm' } } }),
  },
  {
    name: 'a tolerance too tight without gauging, widened as told in inches',
    change: {
      groove: { depth: { wanted: '8 mm', plus: '6 mm', minus: '0 mm' } },
      plan: { gauge_stops: 'never' },
    },
    constraint: 'depth_plus',
    eased: ({ remedy }) => ({
      groove: {
        depth: {
          wanted: '8 mm',
          plus: /by (.+ in)$/u.exec(sentenceText(remedy, 'inch'))![1]!,
          minus: '0 mm',
        },
      },
      plan: { gauge_stops: 'never' },
    }),
  },
  {
    name: 'a tolerance too tight without gauging, held less surely',
    change: {
      groove: { depth: { wanted: '8 mm', plus: '6 mm', minus: '0 mm' } },
      plan: { gauge_stops: 'never' },
    },
    constraint: 'assurance',
    eased: ({ demand }) => ({
      groove: { depth: { wanted: '8 mm', plus: '6 mm', minus: '0 mm' }, assurance: `${demand} %` },
      plan: { gauge_stops: 'never' },
    }),
  },
  {
    name: 'a tolerance too tight even with gauging',
    change: { groove: { depth: { wanted: '8 mm', plus: '0.4 mm', minus: '0.2 mm' } } },
    constraint: 'depth_minus',
    eased: ({ demand }) => ({
      groove: { depth: { wanted: '8 mm', plus: '0.4 mm', minus: `${demand} mm` } },
    }),
  },
  {
    name: 'no electrode in stock',
    change: { kit: { electrodes: [electrode('1/2 in', 0)] } },
    constraint: 'electrode_stock',
    eased: ({ demand }) => ({ kit: { electrodes: [electrode('1/2 in', demand)] } }),
  },
  {
    name: 'too few electrodes in stock',
    change: { seam: { length: '20 m' }, kit: { electrodes: [electrode('1/2 in', 2)] } },
    constraint: 'electrode_stock',
    eased: ({ demand }) => ({
      seam: { length: '20 m' },
      kit: { electrodes: [electrode('1/2 in', demand)] },
    }),
  },
  {
    name: 'a ligament that no groove of this depth leaves',
    change: {
      plate: { thickness: '25 mm' },
      groove: { ligament_least: '15 mm', depth: { wanted: '8 mm', plus: '14 mm', minus: '0 mm' } },
    },
    constraint: 'ligament_least',
    eased: ({ demand }) => ({
      plate: { thickness: '25 mm' },
      groove: { ligament_least: `${demand} mm`, depth: { wanted: '8 mm', plus: '14 mm', minus: '0 mm' } },
    }),
  },
  {
    name: 'a root wider than any electrode leaves',
    change: { groove: { root_radius_least: '12 mm' } },
    constraint: 'root_radius',
    eased: ({ demand }) => ({ groove: { root_radius_least: `${demand} mm` } }),
  },
  {
    name: 'a carriage too quick for one layer',
    change: { kit: { travel: { least: '60 in/min', most: '100 in/min' } }, plan: { layers_most: 1 } },
    constraint: 'layers_most',
    eased: ({ demand }) => ({
      kit: { travel: { least: '60 in/min', most: '100 in/min' } },
      plan: { layers_most: demand },
    }),
  },
  {
    name: 'a carriage too slow for a shallow groove',
    change: {
      kit: { travel: { least: '6 in/min', most: '10 in/min' } },
      groove: { depth: { wanted: '5 mm', plus: '5 mm', minus: '0 mm' } },
    },
    constraint: 'travel_most',
    eased: ({ demand }) => ({
      kit: { travel: { least: '6 in/min', most: `${demand} mm/min` } },
      groove: { depth: { wanted: '5 mm', plus: '5 mm', minus: '0 mm' } },
    }),
  },
  {
    name: 'a locked current that the electrode cannot take',
    change: { locks: { current: '200 A' } },
    constraint: 'locks.current',
    eased: () => ({}),
  },
  {
    name: 'locked values that contradict each other',
    change: { locks: { current: '900 A', travel: '100 in/min', layers: 1 } },
    constraint: 'locks',
    eased: () => ({}),
  },
];

describe('A refusal', { timeout: 60_000 }, () => {
  it.each(CASES)('names the constraint, and its remedy frees the job: $name', (each) => {
    const result = planOf(testJob(each.change));
    if (!('refusal' in result)) throw new Error('this job was meant to be refused');
    const { binding } = result.refusal;
    const named = binding.find(({ constraint }) => constraint === each.constraint);
    expect(named, `names ${binding.map(({ constraint }) => constraint).join(', ')}`).toBeDefined();
    expect(sentenceText(named!.remedy, 'metric').length).toBeGreaterThan(10);
    expect(named!.demand).not.toBe(named!.limit);
    expect('plan' in planOf(testJob(each.eased(named!)))).toBe(true);
  });

  it('says what was missed where no single change frees the job', () => {
    const result = planOf(
      testJob({
        groove: {
          depth: { wanted: '8 mm', plus: '0.1 mm', minus: '0 mm' },
          root_radius_least: '20 mm',
          width: { least: '4 mm', most: '6 mm' },
        },
      }),
    );
    if (!('refusal' in result)) throw new Error('this job was meant to be refused');
    expect(sentenceText(result.refusal.summary, 'metric')).toMatch(/several.*needed at once/);
    expect(sentenceText(result.refusal.summary, 'metric')).toContain('root radius, 20.0 mm asked for');
    expect(result.refusal.binding.map(({ constraint }) => constraint)).toEqual(['root_radius']);
    expect(result.refusal.binding[0]!.demand).toBe(20);
  });

  it('tells what the closest set-up comes to, in the figures that it has', () => {
    const summaryOf = (change: TestJobChange): string => {
      const result = planOf(testJob(change));
      if (!('refusal' in result)) throw new Error('this job was meant to be refused');
      return sentenceText(result.refusal.summary, 'metric');
    };
    const close = summaryOf({ groove: { depth: { wanted: '8 mm', plus: '0.1 mm', minus: '0 mm' } } });
    const chance = /chance that no point is too deep, 95 % asked for, ([\d.]+) % there/u.exec(close)?.[1];
    expect(Number(chance)).toBeGreaterThan(0);
    expect(Number(chance)).toBeLessThan(50);
    const quick = summaryOf({
      kit: { travel: { least: '60 in/min', most: '100 in/min' } },
      plan: { layers_most: 1, gauge_stops: 'never' },
      groove: { depth: { wanted: '12 mm', plus: '1 mm', minus: '1 mm' } },
    });
    const travel = /travel, least, ([\d.]+) mm\/min asked for, 1524 mm\/min there/u.exec(quick)?.[1];
    expect(Number(travel)).toBeGreaterThan(500);
    expect(Number(travel)).toBeLessThan(700);
  });

  it('is the same again', () => {
    const { job } = testJob({ kit: { current: { least: '100 A', most: '400 A' } } });
    expect(JSON.stringify(planOf({ job, defaultsUsed: [], revision: '' }))).toBe(
      JSON.stringify(planOf({ job, defaultsUsed: [], revision: '' })),
    );
  });
});
