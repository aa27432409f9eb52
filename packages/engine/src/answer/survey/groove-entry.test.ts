import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type ReadJob, readJob } from '../../job/index.ts';
import { newTrials, readTrials, withEntry } from '../../learn/index.ts';
import type { PlanOutcome } from '../../plan/index.ts';
import type { SeamGauged } from '../../survey/index.ts';
import { answerJob } from '../job/answer-job.ts';
import { entryOfGroove, ranPasses } from './groove-entry.ts';

let job: ReadJob['job'];
let plan: PlanOutcome;

beforeAll(() => {
  const outcome = readJob(
    readFileSync(new URL('../../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8'),
  );
  if (!outcome.ok) throw new Error('the example cannot be read');
  job = outcome.value.job;
  const planned = answerJob({ job: outcome.value, version: '0' }).basis!.plan!;
  const [first] = planned.passes;
  // one blind pass, whatever the planner finds best today
  plan = {
    ...planned,
    passes: [{ ...first!, number: 1, layer: 1, track: 1, from: 0, to: job.seam.length, setByGauge: false }],
  };
}, 60_000);

function gauged(at: number, depth: number, rest: Partial<SeamGauged> = {}): SeamGauged {
  return { at, depth, u: job.kit.gauge.reading_sd, from: 'gauge', file: 'g.csv', row: 1, ...rest };
}

function made(readings: readonly SeamGauged[], changes: Partial<Parameters<typeof entryOfGroove>[0]> = {}) {
  return entryOfGroove({ id: 'j-01', date: '2026-05-04', job, plan, gauged: readings, ...changes });
}

describe('a gauged groove as an entry of the trials', () => {
  it('reads back as it was measured, each reading with its own uncertainty', () => {
    const { entry, readings, leftOut } = made([
      gauged(1, 0.0151),
      gauged(2, 0.0148, { u: 3e-5, width: { value: 0.0163, u: 5e-5 }, from: 'scan', row: null }),
    ]);
    expect([readings, leftOut]).toEqual([2, []]);
    const read = readTrials(withEntry(newTrials('bay 2'), entry!));
    if (!read.ok) throw new Error(read.issues[0]?.message);
    const [observation] = read.value.observations;
    expect(observation).toMatchObject({ id: 'j-01', kind: 'job', date: '2026-05-04' });
    expect(observation!.gaugeSd).toBeCloseTo(job.kit.gauge.reading_sd, 9);
    const [pass] = observation!.passes;
    expect(pass!.setting.current).toBeCloseTo(plan.passes[0]!.current, 1);
    expect(pass!.setting.travel).toBeCloseTo(plan.passes[0]!.travel, 6);
    expect(pass!.setting.diameter).toBeCloseTo(plan.electrode.diameter, 6);
    expect(pass!.stations[0]).toEqual({ at: expect.closeTo(1, 9), depth: expect.closeTo(0.0151, 9) });
    expect(pass!.stations[1]).toEqual({
      at: expect.closeTo(2, 9),
      depth: expect.closeTo(0.0148, 9),
      depthSd: expect.closeTo(3e-5, 9),
      width: expect.closeTo(0.0163, 9),
      widthSd: expect.closeTo(5e-5, 9),
    });
  });

  it('takes current, voltage and travel as they were run', () => {
    const { entry } = made([gauged(1, 0.015)], { ran: [{ number: 1, current: 777, travel: 0.011 }] });
    expect(entry!['passes']).toMatchObject([{ current: '777 A', travel: '660 mm/min' }]);
  });

  it('leaves out what does not say how deep one pass cut, and says why', () => {
    const [pass] = plan.passes;
    const with2 = (other: Partial<typeof pass>): PlanOutcome => ({
      ...plan,
      passes: [pass!, { ...pass!, number: 2, from: 3, ...other }],
    });
    const two = [gauged(1, 0.015), gauged(4, 0.015)];
    expect(made(two, { plan: with2({ track: 2 }) }).leftOut).toEqual([
      { why: 'several_tracks', readings: 1 },
    ]);
    expect(
      made([gauged(4, 0.015, { track: 2 })], { plan: with2({ track: 2 }) }).entry!['passes'],
    ).toHaveLength(1);
    expect(made([gauged(1, 0)]).leftOut).toEqual([{ why: 'nothing_cut', readings: 1 }]);
    const byTable = { ...plan, passes: [{ ...pass!, setByGauge: true }] };
    expect(made(two, { plan: byTable })).toMatchObject({
      entry: null,
      leftOut: [{ why: 'travel_unknown', readings: 2 }],
    });
    expect(made(two, { plan: byTable, ran: [{ number: 1, travel: 0.01 }] }).readings).toBe(2);
  });

  it('takes off what was there before, where the floor was read after each layer', () => {
    const [pass] = plan.passes;
    const layers = { ...plan, passes: [pass!, { ...pass!, number: 2, layer: 2 }] };
    const read = [
      gauged(1, 0.008, { afterPass: 1, u: 3e-4 }),
      gauged(1.02, 0.0155, { u: 4e-4, width: { value: 0.018, u: 1e-4 } }),
      gauged(2, 0.0151),
    ];
    const { entry, leftOut } = made(read, { plan: layers });
    expect(entry!['passes']).toMatchObject([
      { stations: [{ depth: '8 mm' }] },
      { stations: [{ depth: '7.5 mm', depth_sd: '0.5 mm' }] },
      { below: [{ current: expect.any(String) }], stations: [{ at: '2 m', depth: '15.1 mm' }] },
    ]);
    expect(JSON.stringify(entry)).not.toContain('width');
    expect(leftOut).toEqual([]);
  });

  it('tells layers together that were gauged at the end alone, each as it was run, and back to the floor last read', () => {
    const [pass] = plan.passes;
    const of = (number: number, rest: object = {}) => ({ ...pass!, number, layer: number, ...rest });
    const layers = { ...plan, passes: [of(1), of(2), of(3)] };
    const ran = [1, 2, 3].map((number) => ({ number, travel: 0.01 + 0.002 * number }));
    const end = gauged(2, 0.024, { width: { value: 0.018, u: 1e-4 } });
    const { entry, readings } = made([end], { plan: layers, ran });
    expect(readings).toBe(1);
    expect(entry!['passes']).toMatchObject([
      { travel: '960 mm/min', below: [{ travel: '840 mm/min' }, { travel: '720 mm/min' }] },
    ]);
    expect(JSON.stringify(entry)).not.toContain('width');
    const read = readTrials(withEntry(newTrials('bay 2'), entry!));
    if (!read.ok) throw new Error(read.issues[0]?.message);
    const [{ setting, below, stations }] = read.value.observations[0]!.passes as [
      (typeof read.value.observations)[0]['passes'][0],
    ];
    expect([setting, ...below!].map(({ travel }) => travel)).toEqual([
      expect.closeTo(0.016, 9),
      expect.closeTo(0.014, 9),
      expect.closeTo(0.012, 9),
    ]);
    expect(stations).toEqual([{ at: expect.closeTo(2, 9), depth: expect.closeTo(0.024, 9) }]);
    // down to the floor that was read after the first
    const floor = gauged(2, 0.008, { afterPass: 1, u: 3e-4 });
    expect(made([floor, end], { plan: layers, ran }).entry!['passes']).toMatchObject([
      { stations: [{ depth: '8 mm' }] },
      { below: [{ travel: '840 mm/min' }], stations: [{ depth: '16 mm' }] },
    ]);
    // a travel that nobody stated leaves the sum unknown, whichever layer it is of
    const table = { ...plan, passes: [of(1), of(2, { setByGauge: true })] };
    expect(made([end], { plan: table }).leftOut).toEqual([{ why: 'travel_unknown', readings: 1 }]);
    const tracks = { ...plan, passes: [of(1), of(1, { number: 2, track: 2 }), of(3)] };
    expect(made([end], { plan: tracks, ran }).leftOut).toEqual([{ why: 'several_tracks', readings: 1 }]);
  });

  it('keeps a dense scan to stations that are spread over the whole pass', () => {
    const dense = Array.from({ length: 1000 }, (_, i) => gauged(i * 0.005, 0.015));
    const { entry, readings } = made(dense);
    const [{ stations }] = entry!['passes'] as [{ stations: readonly { at: string }[] }];
    expect(readings).toBe(1000);
    expect(stations).toHaveLength(60);
    expect([stations[0]!.at, stations.at(-1)!.at]).toEqual(['0 m', '4.995 m']);
  });
});

it('takes of several tries at a pass the one that gouged most, and says nothing of what the log lacks', () => {
  const totals = { arcTime: 50, arcOutTime: 0, voltage: 41, current: undefined, gouged: 0.5 };
  const tried = (planned: number | undefined, changes: object) => ({
    planned,
    totals: { ...totals, ...changes },
  });
  const passes = [
    tried(1, { gouged: 0.1 }),
    tried(1, {}),
    tried(undefined, {}),
    tried(2, { gouged: undefined }),
  ] as unknown as Parameters<typeof ranPasses>[0]['passes'];
  expect(ranPasses({ passes })).toEqual([
    { number: 1, voltage: 41, travel: 0.01 },
    { number: 2, voltage: 41 },
  ]);
});
