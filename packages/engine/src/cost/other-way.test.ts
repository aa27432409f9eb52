import { describe, expect, it } from 'vitest';
import { arcWork } from './arc-work.test-support.ts';
import { costJob } from './cost-job.test-support.ts';
import { breakEvenLength, compareWays, type OtherWay } from './other-way.ts';
import { costPracticeOf } from './practice.ts';

function wayOf(way: OtherWay, more = '') {
  const job = costJob(more);
  return compareWays(job, arcWork(), costPracticeOf(job)).find((each) => each.way === way)!;
}

describe('another way', () => {
  it('takes the time that the stated metres per hour give', () => {
    const stated = wayOf(
      'chipping',
      'after:\n  alternatives: { chipping: { groove_m_per_h: 0.5, crew_per_hour: 90 } }\n',
    );
    expect(stated).toMatchObject({ rate: 'stated', source: { provenance: 'job file' } });
    expect(stated.taken!.grooveTime).toBeCloseTo(8 * 3600, 6);
  });

  it('takes the volume over the stated removal where no metres per hour are stated', () => {
    const { section } = arcWork();
    const stated = wayOf('grinding', 'after:\n  alternatives: { grinding: { removal_cm3_per_min: 5 } }\n');
    const volume = section.areaPerLength * section.seamLength * 1e6;
    expect(stated.taken!.grooveTime).toBeCloseTo((volume / 5) * 60, 6);
  });

  it('is not compared where nothing is known of its pace', () => {
    expect(wayOf('chipping')).toMatchObject({ rate: 'missing', taken: undefined });
  });

  it('says where an assumed pace comes from', () => {
    expect(wayOf('manual_gouging')).toMatchObject({
      rate: 'assumed',
      source: { provenance: 'common practice' },
    });
    expect(wayOf('machining').source.text).toMatch(/naval/);
  });

  it('has no skin to grind off where the groove was made cold', () => {
    const job = costJob(
      'after:\n  alternatives: { manual_gouging: { groove_m_per_h: 1, set_up_time: 0 min }, machining: { groove_m_per_h: 1, set_up_time: 0 min } }\n',
    );
    const ways = compareWays(job, arcWork(), costPracticeOf(job));
    const time = (way: OtherWay) => ways.find((each) => each.way === way)!.taken!.time;
    expect(time('machining')).toBeLessThan(time('manual_gouging'));
  });
});

describe('the length from which on a way is cheaper', () => {
  it('is none where it is dearer by the metre, and 0 where it is cheaper in both', () => {
    expect(breakEvenLength({ fixed: 50, perMetre: 9 }, { fixed: 20, perMetre: 8 })).toBeNull();
    expect(breakEvenLength({ fixed: 10, perMetre: 7 }, { fixed: 20, perMetre: 8 })).toBe(0);
  });
});
