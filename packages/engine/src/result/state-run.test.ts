import { describe, expect, it } from 'vitest';
import { say } from '../quantity/index.ts';
import type { RunEvent } from '../run/index.ts';
import { type RunStatement, stateRun } from './run.ts';

const SAYS = say`so`;
const EVENT: RunEvent = {
  ...{ kind: 'arc_out', pass: 2, start: 10, end: 11, from: 0.5, to: 0.75, placeSd: 0.004 },
  ...{ firstRow: 100, lastRow: 110, rose: undefined, says: SAYS },
};
const TOTALS = {
  ...{ arcTime: 100, arcOutTime: 1, voltage: 42, current: 800, energy: 3_360_000, charge: 80_000 },
  ...{ fed: 0.25, travelled: 1.5, gouged: 1.485 },
};

function stated(change: Partial<RunStatement> = {}, interval = 0.1) {
  return stateRun({
    verdict: [],
    inputs: {},
    reading: {},
    outcome: {
      ...{ rows: 1000, duration: 101, interval, channels: ['voltage_V', 'current_A'], way: 'travel' },
      ...{ totals: TOTALS, passes: [], events: [EVENT], notListed: { spike: 2, short: 3 }, strikes: 0 },
    },
    turn: undefined,
    causes: () => undefined,
    along: undefined,
    wanted: { depth: 0.01, least: 0.009, most: 0.012, length: 3 },
    electrodeUsed: 0.25,
    electrodePlanned: 0.3,
    stretches: [],
    remaining: undefined,
    fits: undefined,
    cannotTell: [],
    ...change,
  } as unknown as RunStatement);
}

describe('a review as it leaves the engine', () => {
  it('gives an event its two ends, on a girth in degrees as well', () => {
    const [straight] = stated().events;
    expect(straight).toMatchObject({ from_mm: 500, to_mm: 750, from_deg: null, to_deg: null });
    expect(straight).toMatchObject({ place_sd_mm: 4, start_s: 10, end_s: 11, first_row: 100, last_row: 110 });
    expect(stated({ turn: 3 }).events[0]).toMatchObject({ from_deg: 60, to_deg: 90 });
    expect(stated().events_not_listed).toBe(5);
  });

  it('says whether the energy is from instants or from means', () => {
    expect(stated().totals.energy_by).toBe('means');
    expect(stated({}, 0.0005).totals.energy_by).toBe('instants');
  });

  it('has its sums in the unit of their key', () => {
    expect(stated().totals).toMatchObject({
      ...{ arc_time_s: 100, arc_out_time_s: 1, mean_arc_voltage_V: 42, mean_current_A: 800 },
      ...{ arc_energy_kJ: 3360, travelled_mm: 1500, gouged_mm: 1485 },
      ...{ electrode_used_mm: 250, electrode_planned_mm: 300 },
    });
    expect(stated().wanted).toEqual({ depth_mm: 10, least_mm: 9, most_mm: 12, length_mm: 3000 });
  });

  it('gives the depth at the middle of each cell, from its 5th to its 95th percentile', () => {
    const along = {
      ...{ cell: 0.01, cells: 2, layers: [], median: () => 0.01, chanceBelow: () => 0 },
      at: (cell: number, share: number) => 0.01 + cell / 1000 + share / 1000,
    };
    const { depth } = stated({ along });
    expect(depth.map(({ at_mm }) => at_mm)).toEqual([expect.closeTo(5, 9), expect.closeTo(15, 9)]);
    expect(depth[1]!.p05_mm).toBeCloseTo(11.05, 9);
    expect(depth[1]!.p50_mm).toBeCloseTo(11.5, 9);
    expect(depth[1]!.p95_mm).toBeCloseTo(11.95, 9);
  });

  it('states a stretch with its recut, and what remains, in mm and mm/min', () => {
    const recut = {
      ...{ from: 0.09, to: 0.21, current: 450, voltage: 40, travel: 0.01, dwell: 1.5 },
      ...{
        passes: 3,
        passesBefore: 2,
        stop: { afterLayer: 4, stations: [0.15], readingSd: 0.0003, table: [] },
      },
      depth: { p05: 0.001, p50: 0.002, p95: 0.003 },
      ...{ ramp: 0.012, chances: { reached: 0.9, notTooDeep: 0.8, ligamentKept: 0.7 } },
    };
    const stretch = { kind: 'shallow', pass: undefined, from: 0.1, to: 0.2, depth: 0.008, says: SAYS, recut };
    const band = (middle: number) => ({ p05: middle - 0.001, p50: middle, p95: middle + 0.001 });
    const remaining = {
      ...{ passes: [3, 4], now: 0.006, end: 0.01, planned: 0.02, says: SAYS },
      plan: {
        ...{ passes: 2, passesBefore: 1, travel: 0.015, table: [], meets: true },
        ...{ before: band(0.005), after: band(0.01) },
        chances: { reached: 0.96, notTooDeep: 0.97, ligamentKept: 0.98 },
      },
      stop: { afterLayer: 3, stations: [0.2, 0.6], readingSd: 0.0002, table: [] },
      apart: [{ from: 0.3, to: 0.31 }],
    };
    const report = stated({ stretches: [stretch] as RunStatement['stretches'], remaining });
    expect(report.stretches[0]).toMatchObject({ pass: null, from_mm: 100, to_mm: 200, depth_mm: 8 });
    const told = report.stretches[0]!.recut!;
    expect(told).toMatchObject({ from_mm: 90, to_mm: 210, current_A: 450, arc_voltage_V: 40, dwell_s: 1.5 });
    expect(told).toMatchObject({
      passes: 3,
      passes_before_gauge: 2,
      gauge: { after_layer: 4, reading_sd_mm: 0.3 },
    });
    expect(told.gauge!.station_positions_mm).toEqual([150]);
    expect(told.travel_mm_per_min).toBeCloseTo(600, 9);
    expect(told.depth_mm).toEqual({ p05: 1, p50: 2, p95: 3 });
    expect(report.remaining).toMatchObject({ passes: [3, 4], depth_now_mm: 6, depth_end_mm: 10 });
    expect(report.remaining!.travel_planned_mm_per_min).toBeCloseTo(1200, 9);
    expect(report.remaining!.travel_mm_per_min).toBeCloseTo(900, 9);
    expect(report.remaining!.expected_mm.p05).toBeCloseTo(9, 9);
    expect(report.remaining!.now_mm.p95).toBeCloseTo(6, 9);
    expect(report.remaining!.chances).toEqual({ reached: 0.96, not_too_deep: 0.97, ligament_kept: 0.98 });
    expect(report.remaining!.gauge).toMatchObject({ after_layer: 3, stations: 2, reading_sd_mm: 0.2 });
    expect(report.remaining!.apart[0]!.to_mm).toBeCloseTo(310, 9);
    expect(told.ramp_mm).toBeCloseTo(12, 9);
    expect(told.chances).toEqual({ reached: 0.9, not_too_deep: 0.8, ligament_kept: 0.7 });
  });
});
