import { describe, expect, it } from 'vitest';
import { say } from '../quantity/index.ts';
import type { DepthAlong, RunOutcome } from '../run/index.ts';
import { type RunStatement, stateRun } from './run.ts';
import { mixedUp, unlikeNumbers } from './sources.test-support.ts';

const totals = {
  arcTime: 1,
  arcOutTime: 1,
  voltage: 1,
  current: 1,
  energy: 1,
  charge: 1,
  fed: 1,
  travelled: 1,
  gouged: 1,
};

/** A review in which everything that can be said is said once. */
function statement() {
  const numbers = unlikeNumbers({
    outcome: {
      totals: { ...totals },
      passes: [{ number: 1, planned: 1, start: 1, end: 1, from: 1, to: 1, brief: 1, totals: { ...totals } }],
      events: [{ pass: 1, start: 1, end: 1, from: 1, to: 1, placeSd: 1, firstRow: 1, lastRow: 1 }],
      notListed: { spike: 1 },
    },
    turn: 1,
    wanted: { depth: 1, least: 1, most: 1, length: 1 },
    electrodeUsed: 1,
    electrodePlanned: 1,
    stretches: [
      {
        pass: 1,
        from: 1,
        to: 1,
        depth: 1,
        recut: {
          from: 1,
          to: 1,
          current: 1,
          voltage: 1,
          travel: 1,
          passes: 1,
          passesBefore: 1,
          dwell: 1,
          depth: { p05: 1, p50: 1, p95: 1 },
          ramp: 1,
          chances: { reached: 1, notTooDeep: 1, ligamentKept: 1 },
        },
      },
    ],
    remaining: {
      ...{ passes: [1], now: 1, end: 1, planned: 1 },
      plan: {
        ...{ passes: 1, travel: 1, before: { p05: 1, p50: 1, p95: 1 }, after: { p05: 1, p50: 1, p95: 1 } },
        chances: { reached: 1, notTooDeep: 1, ligamentKept: 1 },
      },
      apart: [{ from: 1, to: 1 }],
    },
    along: { cell: 1, p05: 1, p50: 1, p95: 1 },
  });
  const words = say`words`;
  const { outcome, along, stretches, remaining, ...rest } = numbers;
  const run: RunStatement = {
    verdict: [],
    inputs: {} as RunStatement['inputs'],
    reading: {} as RunStatement['reading'],
    causes: () => undefined,
    fits: true,
    cannotTell: [],
    ...rest,
    outcome: {
      ...outcome,
      interval: 0.01,
      channels: ['voltage_V', 'current_A'],
      passes: outcome.passes.map((pass) => ({ ...pass, complete: true })),
      events: outcome.events.map((event) => ({ ...event, kind: 'spike', says: words })),
    } as unknown as RunOutcome,
    along: {
      cells: 1,
      cell: along.cell,
      at: (_cell: number, share: number) => (share < 0.5 ? along.p05 : share > 0.5 ? along.p95 : along.p50),
      median: () => along.p50,
    } as unknown as DepthAlong,
    stretches: stretches.map((each) => ({
      ...each,
      kind: 'shallow',
      says: words,
    })) as unknown as RunStatement['stretches'],
    remaining: {
      ...remaining,
      plan: { ...remaining.plan, passesBefore: 1, table: [], meets: true },
      stop: undefined,
      says: words,
    },
  };
  return { run, numbers };
}

describe('each number of a review comes from its own source in SI, in the unit of its key', () => {
  it('in a run', () => {
    const { run, numbers } = statement();
    const stated = stateRun(run);
    const { reading: _reading, inputs: _inputs, ...told } = stated;
    expect(
      mixedUp(told, numbers, {
        'totals.arc_time_s': 'outcome.totals.arcTime',
        'totals.arc_out_time_s': 'outcome.totals.arcOutTime',
        'totals.mean_arc_voltage_V': 'outcome.totals.voltage',
        'totals.mean_current_A': 'outcome.totals.current',
        'totals.arc_energy_kJ': 'outcome.totals.energy',
        'totals.travelled_mm': 'outcome.totals.travelled',
        'totals.gouged_mm': 'outcome.totals.gouged',
        'totals.electrode_used_mm': 'electrodeUsed',
        'totals.electrode_planned_mm': 'electrodePlanned',
        'passes.number': 'outcome.passes.number',
        'passes.planned': 'outcome.passes.planned',
        'passes.start_s': 'outcome.passes.start',
        'passes.end_s': 'outcome.passes.end',
        'passes.from_mm': 'outcome.passes.from',
        'passes.to_mm': 'outcome.passes.to',
        'passes.arc_time_s': 'outcome.passes.totals.arcTime',
        'passes.brief_breaks': 'outcome.passes.brief',
        'events.pass': 'outcome.events.pass',
        'events.start_s': 'outcome.events.start',
        'events.end_s': 'outcome.events.end',
        'events.from_mm': 'outcome.events.from',
        'events.to_mm': 'outcome.events.to',
        'events.from_deg': 'counted',
        'events.to_deg': 'counted',
        'events.place_sd_mm': 'outcome.events.placeSd',
        'events.first_row': 'outcome.events.firstRow',
        'events.last_row': 'outcome.events.lastRow',
        events_not_listed: 'outcome.notListed.spike',
        'depth.at_mm': 'counted',
        'depth.p05_mm': 'along.p05',
        'depth.p50_mm': 'along.p50',
        'depth.p95_mm': 'along.p95',
        'stretches.recut.arc_voltage_V': 'stretches.recut.voltage',
        'stretches.recut.passes_before_gauge': 'stretches.recut.passesBefore',
        'remaining.depth_now_mm': 'remaining.now',
        'remaining.depth_end_mm': 'remaining.end',
        'remaining.travel_planned_mm_per_min': 'remaining.planned',
        'remaining.travel_mm_per_min': 'remaining.plan.travel',
        'remaining.passes_to_run': 'remaining.plan.passes',
        'remaining.chances.reached': 'remaining.plan.chances.reached',
        'remaining.chances.not_too_deep': 'remaining.plan.chances.notTooDeep',
        'remaining.chances.ligament_kept': 'remaining.plan.chances.ligamentKept',
        'stretches.recut.chances.not_too_deep': 'stretches.recut.chances.notTooDeep',
        'stretches.recut.chances.ligament_kept': 'stretches.recut.chances.ligamentKept',
        'remaining.expected_mm.p05': 'remaining.plan.after.p05',
        'remaining.expected_mm.p50': 'remaining.plan.after.p50',
        'remaining.expected_mm.p95': 'remaining.plan.after.p95',
        'remaining.now_mm.p05': 'remaining.plan.before.p05',
        'remaining.now_mm.p50': 'remaining.plan.before.p50',
        'remaining.now_mm.p95': 'remaining.plan.before.p95',
      }),
    ).toEqual([]);
    const [event] = numbers.outcome.events;
    expect(stated.events[0]!.from_deg).toBeCloseTo((360 * event!.from) / numbers.turn, 9);
    expect(stated.events[0]!.to_deg).toBeCloseTo((360 * event!.to) / numbers.turn, 9);
    expect(stated.depth[0]!.at_mm).toBeCloseTo(500 * numbers.along.cell, 9);
  });

  it('is null, never 0, where the log cannot give it', () => {
    const { run } = statement();
    const nothing = {
      ...run,
      electrodeUsed: undefined,
      electrodePlanned: undefined,
      outcome: {
        ...run.outcome,
        channels: [],
        totals: { arcTime: 0, arcOutTime: 0 } as RunOutcome['totals'],
      },
    };
    expect(stateRun(nothing).totals).toEqual({
      arc_time_s: null,
      arc_out_time_s: null,
      mean_arc_voltage_V: null,
      mean_current_A: null,
      arc_energy_kJ: null,
      energy_by: null,
      travelled_mm: null,
      gouged_mm: null,
      electrode_used_mm: null,
      electrode_planned_mm: null,
    });
  });
});
