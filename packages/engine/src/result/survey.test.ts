import { describe, expect, it } from 'vitest';
import type { GaugeOutcome, SeamOutcome, SeamPast, Section, Stretch } from '../survey/index.ts';
import { stateGauge } from './gauge.ts';
import { mixedUp, unlikeNumbers } from './sources.test-support.ts';
import { stateSeam, stateSection } from './survey.ts';

const stretch: Stretch = {
  from: 1,
  to: 1,
  verdict: 'fails',
  simple: 'fails',
  miss: 'shallow',
  wrongAccept: 1,
  wrongReject: 1,
};
const band = { p05: 1, p50: 1, p95: 1 };
const limits = { least: 1, most: 1 };
const spread = { common: 1, course: 1, range: 1 };

/** A seam on which everything that can be said is said once. */
function seam(): SeamOutcome {
  return unlikeNumbers<SeamOutcome>({
    verdict: 'fails',
    remaining: { verdict: 'holds', stretches: [{ ...stretch }] },
    width: {
      verdict: 'holds',
      readings: 1,
      setAside: 1,
      band: { ...limits },
      stretches: [{ ...stretch }],
      curve: [{ ...band }],
    },
    spread: { before: { ...spread }, after: { ...spread } },
    prediction: 'plan',
    curve: [{ at: 1, depth: { ...band } }],
    band: { ...limits },
    thickness: 1,
    ligamentLeast: 1,
    readings: [
      {
        reading: { at: 1, depth: 1, u: 1, from: 'gauge', file: 'g', row: 1 },
        why: 'slipped_decimal',
        wouldBe: 1,
      },
    ],
    stretches: [{ ...stretch }],
    rule: '',
    next: { risk: 1, stations: [{ at: 1, gain: 1, gainPerMinute: 1 }] },
    riskUnit: 'm',
    recuts: [
      {
        from: 1,
        to: 1,
        recut: {
          kind: 'pass',
          passes: 1,
          from: 1,
          to: 1,
          ramp: 1,
          depth: 1,
          travel: 1,
          reached: 1,
          notTooDeep: 1,
          plateKept: 1,
        },
        plateLeft: { ...band },
        preheat: { planned: 1 },
      },
      {
        from: 1,
        to: 1,
        recut: { kind: 'grind', from: 1, to: 1, missing: 1, reason: 'it is thin' },
        plateLeft: { ...band },
        preheat: { planned: 1 },
      },
      {
        from: 1,
        to: 1,
        recut: { kind: 'weld', from: 1, to: 1, over: 1, weldMetal: 1, weldMetalBand: { ...band } },
        plateLeft: { ...band },
        preheat: { planned: 1, plateLeft: 1, heldFast: 1, asked: 1 },
      },
    ],
    setting: { current: 1, voltage: 1, pushAngle: 1, diameter: 1 },
    apart: [],
    isFar: false,
  });
}

describe('each number of a survey comes from its own source in SI, in the unit of its key', () => {
  it('along the seam', () => {
    const outcome = seam();
    const taught = { readings: 71, leftOut: [{ why: 'no_pass' as const, readings: 72 }], entry: null };
    const again = [{ from: 81, to: 82 }];
    const past: SeamPast[] = [
      { afterRecut: 91, seam: { verdict: 'fails', stretches: [unlikeStretch()], readings: [] } },
    ];
    const stated = stateSeam(outcome, taught, again, past);
    expect(
      mixedUp(
        stated,
        { ...outcome, taught, again, past },
        {
          'curve.depth_mm.p05': 'curve.depth.p05',
          'limits.least_mm': 'band.least',
          'limits.most_mm': 'band.most',
          'limits.plate_left_least_mm': 'ligamentLeast',
          'remaining.least_mm': 'ligamentLeast',
          'remaining.stretches.chance_wrong_accept': 'remaining.stretches.wrongAccept',
          'remaining.stretches.chance_wrong_reject': 'remaining.stretches.wrongReject',
          'width.limits.least_mm': 'width.band.least',
          'width.limits.most_mm': 'width.band.most',
          'width.stretches.chance_wrong_accept': 'width.stretches.wrongAccept',
          'width.stretches.chance_wrong_reject': 'width.stretches.wrongReject',
          'spread.common': 'spread.after.common',
          'spread.course': 'spread.after.course',
          'spread.common_before': 'spread.before.common',
          'spread.course_before': 'spread.before.course',
          'readings.at_mm': 'readings.reading.at',
          'readings.depth_mm.value': 'readings.reading.depth',
          'readings.depth_mm.u95': 'counted',
          'readings.row': 'readings.reading.row',
          'stretches.chance_wrong_accept': 'stretches.wrongAccept',
          'stretches.chance_wrong_reject': 'stretches.wrongReject',
          risk: 'next.risk',
          'measure_next.at_mm': 'next.stations.at',
          'measure_next.gain': 'next.stations.gain',
          'measure_next.gain_per_minute': 'next.stations.gainPerMinute',
          'recut.from_mm': 'recuts.from',
          'recut.to_mm': 'recuts.to',
          'recut.plan.start_mm': 'recuts.recut.from',
          'recut.plan.end_mm': 'recuts.recut.to',
          'recut.plan.run_in_mm': 'recuts.recut.ramp',
          'recut.plan.passes': 'recuts.recut.passes',
          'recut.plan.take_off_mm': 'recuts.recut.depth',
          'recut.plan.travel_mm_per_min': 'recuts.recut.travel',
          'recut.plan.current_A': 'setting.current',
          'recut.plan.arc_voltage_V': 'setting.voltage',
          'recut.plan.electrode_mm': 'setting.diameter',
          'recut.plan.push_angle_deg': 'setting.pushAngle',
          'recut.plan.chance_reached': 'recuts.recut.reached',
          'recut.plan.chance_plate_kept': 'recuts.recut.plateKept',
          'recut.plan.chance_not_too_deep': 'recuts.recut.notTooDeep',
          'recut.plan.missing_mm': 'recuts.recut.missing',
          'recut.plan.over_mm': 'recuts.recut.over',
          'recut.plan.weld_metal_kg': 'recuts.recut.weldMetal',
          'recut.plan.weld_metal_band_kg.p05': 'recuts.recut.weldMetalBand.p05',
          'recut.plan.weld_metal_band_kg.p50': 'recuts.recut.weldMetalBand.p50',
          'recut.plan.weld_metal_band_kg.p95': 'recuts.recut.weldMetalBand.p95',
          'recut.plan.plate_left_mm.p05': 'recuts.plateLeft.p05',
          'recut.plan.plate_left_mm.p50': 'recuts.plateLeft.p50',
          'recut.plan.plate_left_mm.p95': 'recuts.plateLeft.p95',
          'recut.plan.preheat_planned_degC': 'recuts.preheat.planned',
          'recut.plan.preheat_plate_left_degC': 'recuts.preheat.plateLeft',
          'recut.plan.preheat_held_fast_degC': 'recuts.preheat.heldFast',
          'recut.plan.preheat_asked_degC': 'recuts.preheat.asked',
          'recut.plan.preheat_added_K': 'counted',
          'cut_again.from_mm': 'again.from',
          'cut_again.to_mm': 'again.to',
          'history.after_recut': 'past.afterRecut',
          'history.readings_used': 'counted',
          'history.stretches.from_mm': 'past.seam.stretches.from',
          'history.stretches.to_mm': 'past.seam.stretches.to',
          'history.stretches.chance_wrong_accept': 'past.seam.stretches.wrongAccept',
          'history.stretches.chance_wrong_reject': 'past.seam.stretches.wrongReject',
          'teaches.readings': 'taught.readings',
          'teaches.left_out.readings': 'taught.leftOut.readings',
          'curve.remaining_mm.p05': 'counted',
          'curve.remaining_mm.p50': 'counted',
          'curve.remaining_mm.p95': 'counted',
          'curve.width_mm.p05': 'width.curve.p05',
          'curve.width_mm.p50': 'width.curve.p50',
          'curve.width_mm.p95': 'width.curve.p95',
        },
      ),
    ).toEqual([]);
    const [place] = stated.curve;
    const [{ depth }] = outcome.curve as [(typeof outcome.curve)[number]];
    // the plate left is least where the groove is deepest
    expect(place!.remaining_mm.p05).toBeCloseTo(1000 * (outcome.thickness - depth.p95), 9);
    expect(place!.remaining_mm.p95).toBeCloseTo(1000 * (outcome.thickness - depth.p05), 9);
    expect(stated.readings[0]!.depth_mm.u95).toBeCloseTo(1960 * outcome.readings[0]!.reading.u, 9);
  });

  it('across a section', () => {
    const of = () => ({ value: 1, u95: 1 });
    const section = unlikeNumbers<Section>({
      station: 1,
      depth: of(),
      width: of(),
      rootRadius: of(),
      wallLeft: of(),
      wallRight: of(),
      area: of(),
      plateStep: of(),
      tilt: of(),
      points: { read: 1, missing: 1, outliers: [1] },
      remarks: [],
      outline: undefined,
    });
    const { outline, ...stated } = stateSection(section, 'a.csv');
    expect(mixedUp(stated, section, {})).toEqual([]);
    expect(outline).toBeNull();
    const drawn = {
      ...section,
      outline: {
        offset: Float64Array.of(0.01),
        depth: Float64Array.of(0.02),
        wild: [{ offset: 0.03, depth: 0.04 }],
      },
    };
    expect(stateSection(drawn, 'a.csv').outline).toEqual({
      offset_mm: [10],
      depth_mm: [20],
      outliers: { offset_mm: [30], depth_mm: [40] },
    });
  });

  it('of a gauge', () => {
    const outcome = unlikeNumbers<GaugeOutcome>({
      crossed: [
        {
          method: 'anova',
          repeatability: 1,
          reproducibility: 1,
          reading: 1,
          parts: 1,
          distinct: 1,
          clamped: false,
        },
      ],
      nested: { level1: 1, level2: 1, level3: 1, days: 1, runs: 1, reading: 1, clamped: false },
      checks: [{ off: 1, u: 1, verdict: 'holds', when: 'now', by: 'A' }],
      budget: { lines: [{ what: 'seating', u: 1 }], u: 1 },
      from: '',
    });
    const read = { gauge: { gauge: 'g' }, revision: 'r', defaultsUsed: [] } as unknown as Parameters<
      typeof stateGauge
    >[0];
    const stated = stateGauge(read, outcome, '0');
    expect(
      mixedUp(stated, outcome, {
        'reading.u_mm': 'budget.u',
        'reading.u95_mm': 'counted',
        'reading.budget.u_mm': 'budget.lines.u',
      }),
    ).toEqual([]);
    expect(stated.reading!.u95_mm).toBeCloseTo(1.96 * stated.reading!.u_mm, 9);
  });
});

function unlikeStretch(): Stretch {
  return { ...stretch, from: 92, to: 93, wrongAccept: 94, wrongReject: 95 };
}
