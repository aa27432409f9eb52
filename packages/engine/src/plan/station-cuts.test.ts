import { beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../job/index.ts';
import type { PlanOutcome, RowOutcome } from './outcome.ts';
import { planned } from './plan-of.test-support.ts';
import { stationCuts } from './station-cuts.ts';
import { testJob } from './test-job.test-support.ts';

describe('the passes that go by a station when every reading is the median one', () => {
  let job: Job;
  let plan: PlanOutcome;
  beforeAll(() => {
    ({ job } = testJob());
    plan = planned(job).plan;
  });

  /** Two layers of one pass of 5 mm each, gauged between. */
  function layered(table: readonly Pick<RowOutcome, 'from' | 'to' | 'action'>[]): PlanOutcome {
    const [first] = plan.passes;
    const depth = { ...first!.depth, p50: 0.005 };
    const passes = [1, 2].map((layer) => ({ ...first!, number: layer, layer, depth, from: 0, to: 1 }));
    const stops = [{ afterLayer: 1, stations: [0.5], readingSd: 0.0003, table, stationsChoice: [] }];
    return { ...plan, layers: 2, passes, stops, changes: [] } as unknown as PlanOutcome;
  }

  const layersRun = (table: Parameters<typeof layered>[0]): readonly number[] =>
    stationCuts({ job, plan: layered(table), passWidth: 0.014, station: 0.5 }).map(({ pass }) => pass.layer);

  it('end where the reading says that the groove is deep enough', () => {
    const deepEnough = [
      { from: 0, to: 0.004, action: 'run' },
      { from: 0.004, to: undefined, action: 'done' },
    ] as const;
    expect(layersRun(deepEnough)).toEqual([1]);
  });

  it('go on where the reading lies in the row of one more pass, the row above it notwithstanding', () => {
    const shallow = [
      { from: 0, to: 0.003, action: 'done' },
      { from: 0.003, to: 0.008, action: 'run' },
      { from: 0.008, to: undefined, action: 'done' },
    ] as const;
    expect(layersRun(shallow)).toEqual([1, 2]);
  });

  it('go on at the very end of the row before the one that is done', () => {
    expect(
      layersRun([
        { from: 0, to: 0.005, action: 'done' },
        { from: 0.005, to: undefined, action: 'run' },
      ]),
    ).toEqual([1, 2]);
  });
});
