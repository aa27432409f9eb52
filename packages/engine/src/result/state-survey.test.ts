import { expect, it } from 'vitest';
import type { SeamOutcome, SeamRepair } from '../survey/index.ts';
import { stateSeam } from './survey.ts';

const PASS: SeamRepair = {
  ...{ kind: 'pass', passes: 1, from: 0.98, to: 1.52, ramp: 0.02, depth: 0.0025, travel: 0.01 },
  ...{ reached: 0.97, notTooDeep: 0.88, plateKept: 0.999 },
};

const UNDER = {
  plateLeft: { p05: 0.011, p50: 0.012, p95: 0.013 },
  preheat: { planned: 333.15, plateLeft: 313.15, heldFast: 423.15, asked: 423.15 },
};

const SEAM = {
  verdict: 'fails',
  prediction: 'plan',
  curve: [{ at: 0.5, depth: { p05: 0.009, p50: 0.01, p95: 0.012 } }],
  band: { least: 0.009, most: 0.014 },
  thickness: 0.02,
  ligamentLeast: 0.004,
  readings: [
    {
      reading: { at: 0.5, depth: 0.0101, u: 0.0002, from: 'gauge', file: 'g.csv', row: 3 },
      why: null,
      wouldBe: null,
    },
  ],
  stretches: [
    {
      ...{ from: 1, to: 1.5, verdict: 'fails', simple: 'fails', miss: 'shallow' },
      ...{ wrongAccept: 0.99, wrongReject: 0.01 },
    },
  ],
  remaining: { verdict: 'holds', stretches: [] },
  width: {
    verdict: 'holds',
    readings: 0,
    setAside: 0,
    band: { least: 0, most: 1 },
    stretches: [],
    curve: [{ p05: 0.011, p50: 0.012, p95: 0.013 }],
  },
  spread: {
    before: { common: 0.1, course: 0.05, range: 0.25 },
    after: { common: 0.1, course: 0.05, range: 0.25 },
  },
  rule: 'by rule',
  next: { risk: 0.25, stations: [{ at: 1.2, gain: 0.1, gainPerMinute: 0.2 }] },
  riskUnit: 'm',
  recuts: [{ from: 1, to: 1.5, recut: PASS, ...UNDER }],
  setting: { current: 450, voltage: 40, pushAngle: Math.PI / 4, diameter: 0.01 },
  apart: [],
  isFar: false,
} as unknown as SeamOutcome;

const stated = (seam: SeamOutcome = SEAM) => stateSeam(seam, { readings: 0, leftOut: [], entry: null });

it('leaves least plate where the groove may be deepest', () => {
  const [place] = stated().curve;
  expect(place).toMatchObject({ at_mm: 500, depth_mm: { p05: 9, p50: 10, p95: 12 } });
  expect(place!.remaining_mm.p05).toBeCloseTo(8, 9);
  expect(place!.remaining_mm.p50).toBeCloseTo(10, 9);
  expect(place!.remaining_mm.p95).toBeCloseTo(11, 9);
});

it('gives a reading its 95 % uncertainty and a stretch its two chances', () => {
  const { readings, stretches, limits } = stated();
  expect(readings[0]!.depth_mm.value).toBeCloseTo(10.1, 9);
  expect(readings[0]!.depth_mm.u95).toBeCloseTo(0.392, 3);
  expect(stretches[0]).toMatchObject({ chance_wrong_accept: 0.99, chance_wrong_reject: 0.01 });
  expect(limits).toEqual({ least_mm: 9, most_mm: 14, plate_left_least_mm: 4 });
});

it('states a repair pass with its settings and its two chances', () => {
  const { plan } = stated().recut[0]!;
  expect(plan).toMatchObject({ kind: 'pass', start_mm: 980, end_mm: 1520, run_in_mm: 20, take_off_mm: 2.5 });
  expect(plan).toMatchObject({ current_A: 450, arc_voltage_V: 40, electrode_mm: 10, push_angle_deg: 45 });
  expect(plan).toMatchObject({ chance_reached: 0.97, chance_not_too_deep: 0.88 });
  expect(plan.travel_mm_per_min).toBeCloseTo(600, 9);
  expect(plan.says.join(' ')).toContain('The chance is below 95 %');
});

it('states weld metal where it is too deep, and what is missing where no pass helps', () => {
  const told = (recut: SeamRepair) =>
    stated({ ...SEAM, recuts: [{ from: 1, to: 1.5, recut, ...UNDER }] }).recut[0]!.plan;
  const weldMetalBand = { p05: 0.08, p50: 0.12, p95: 0.16 };
  const weld = told({ kind: 'weld', from: 1, to: 1.5, over: 0.002, weldMetal: 0.12, weldMetalBand });
  expect(weld).toMatchObject({
    ...{ over_mm: 2, weld_metal_kg: 0.12, weld_metal_band_kg: weldMetalBand },
    ...{ preheat_planned_degC: 60, preheat_plate_left_degC: 40, preheat_asked_degC: 150 },
  });
  expect([weld.plate_left_mm!.p05, weld.preheat_added_K]).toEqual([11, 90]);
  const ground = told({ kind: 'grind', from: 1, to: 1.5, reason: 'too little', missing: 0.0015 });
  expect([ground.missing_mm, ground.says[0]]).toEqual([1.5, 'Too little.']);
});
