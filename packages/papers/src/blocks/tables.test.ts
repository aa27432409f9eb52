import type {
  AirReport,
  CostReport,
  CrewNoiseReport,
  GaugeRow,
  GaugeStop,
  HazardRow,
  HeatReport,
  Plan,
} from '@furrow/engine';
import { boundOf, formatStated, say } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import {
  actionText,
  breachTexts,
  chanceWords,
  gaugePlaces,
  perLength,
  rangeText,
  readingText,
  sharePercent,
  skinText,
} from '../words/index.ts';
import { extraTable, itemTable } from './cost-tables.ts';
import { gaugeTable } from './gauge-table.ts';
import { crewTables, noiseTable, verdictTable } from './hazard-tables.ts';
import { limitTable, remedyList } from './limit-table.ts';
import { passTable } from './pass-table.ts';
import { expectationFigures } from './setting-figures.ts';
import { airTable, leadTable, pickTable, sourceTable } from './supply-blocks.ts';

const SOURCE = { text: 'a test', provenance: 'derived' } as const;

const row: GaugeRow = {
  from_mm: 5.08,
  to_mm: 7.62,
  action: 'run',
  reason: null,
  in_band: false,
  travel_mm_per_min: 508,
  deepen_travel_mm_per_min: null,
  travel_factor: 1,
  expect_mm: { p05: 9, p50: 10, p95: 11 },
  too_shallow: 0.04,
  too_deep: 0.02,
  reading_from_mm: 5.08,
  reading_to_mm: 7.62,
  expected_depth_mm: { p05: 9, p50: 10, p95: 11 },
  depth_reached: 0.96,
  not_too_deep: 0.98,
};
const stop: GaugeStop = {
  after_layer: 2,
  stations: 2,
  station_positions_mm: [508, 1016],
  reading_sd_mm: 0.3,
  table: [row, { ...row, action: 'done', reading_to_mm: null }, { ...row, action: 'ask' }],
  stations_choice: [],
};

describe('what hands follow at the gauge', () => {
  it('reads in thousandths of an inch or tenths of a millimetre', () => {
    expect(readingText(row, 'inch')).toBe('0.200 to 0.299');
    expect(readingText(row, 'metric')).toBe('5.1 to 7.5');
    expect(readingText({ ...row, reading_from_mm: 0 }, 'inch')).toBe('below 0.300');
    expect(readingText({ ...row, reading_to_mm: null }, 'inch')).toBe('0.200 and deeper');
    expect(actionText(row, 'inch')).toBe('travel 20 in/min');
    expect(actionText(row, 'metric')).toBe('travel 508 mm/min');
  });

  it('says what to do in the same words everywhere, and no chance where the engineer is asked', () => {
    const { rows, caption } = gaugeTable(stop, 'metric');
    expect(caption).toBe('Reading after layer 2, and what to do');
    expect(rows.map((cells) => cells.slice(1))).toEqual([
      ['travel 508 mm/min', '10.0 (9.0–11.0)', '4', '2'],
      ['run no more passes', '10.0 (9.0–11.0)', '4', '2'],
      ['stop, ask the welding engineer', '–', '–', '–'],
    ]);
    expect(gaugePlaces(stop, 'inch')).toContain('at 2 stations: 20 in, 3 ft 4 in from the start');
    expect(gaugePlaces(stop, 'metric')).toContain('508 mm, 1.02 m from the start');
  });

  it('never reads surer than it is', () => {
    expect(chanceWords(0.9599)).toBe('95 in 100');
    expect(chanceWords(0.9959)).toBe('995 in 1000');
    expect(chanceWords(0.9999)).toBe('over 999 in 1000');
  });
});

describe('the limits that an engineer signs', () => {
  const limit = {
    id: 'flowing_pressure',
    title: 'Flowing pressure',
    demand: 500,
    capacity: 551.6,
    unit: 'kPa',
    sense: 'least',
    verdict: 'fails',
    hard: true,
    source: SOURCE,
    remedy: 'a wider hose.',
    sensitivity: [],
  } as const;

  it('stand with their sense and unit', () => {
    expect(limitTable('Margins', [limit], 'metric').rows).toEqual([
      ['Flowing pressure', '5.0 bar', '≥ 5.5 bar', 'fails', 'a test (derived)'],
    ]);
    expect(limitTable('Margins', [{ ...limit, sense: 'most', hard: false }], 'inch').rows[0]).toEqual([
      'Flowing pressure',
      '73 psi',
      '≤ 80 psi',
      'fails, not binding',
      'a test (derived)',
    ]);
  });

  it('name what would mend those that do not hold, and no others', () => {
    expect(remedyList([limit, { ...limit, verdict: 'holds' }], 'metric').items).toEqual([
      'Flowing pressure fails; what would mend it: a wider hose.',
    ]);
    const larger = { ...limit, remedy: say`a receiver of ${boundOf(0.5, 'volume', 'least')}` };
    expect(remedyList([larger], 'metric').items[0]).toContain('a receiver of 500 L.');
    expect(remedyList([larger], 'inch').items[0]).toMatch(/a receiver of [\d.]+ gal\.$/u);
  });
});

describe('power, air and stock', () => {
  it('stand with the amounts of the reader', () => {
    const source = {
      name: 'One',
      current_A: 450,
      share_percent: 50,
      terminal_voltage_V: 44,
      no_load_voltage_V: 80,
      permissible_minutes: 6.5,
    };
    const lead = {
      name: 'Torch lead',
      parallels: 2,
      size: '95 mm2',
      length_m: 20,
      drop_V: 0.5,
      temperature_C: 60,
      insulation_limit_C: 90,
    };
    const point = { sources: [source], leads: [lead] } as never;
    expect(sourceTable(point, 'metric').rows).toEqual([
      ['One', '450 A', '50 %', '44.0 V', '80.0 V', '6.5 min'],
    ]);
    expect(leadTable(point, 'inch').rows[0]!.slice(3)).toEqual(['500 mV', '140 °F', '194 °F']);
    expect(leadTable(point, 'metric').rows[0]!.slice(2)).toEqual(['20.00 m', '500 mV', '60 °C', '90 °C']);
    const air = { points: [{ behind: 'hose', static_kPa: 700, flowing_kPa: 600 }] } as unknown as AirReport;
    expect(airTable(air, 'metric').rows).toEqual([['hose', '7.0 bar', '6.0 bar']]);
    expect(airTable(air, 'inch').rows).toEqual([['hose', '102 psi', '87 psi']]);
    const picks = [
      {
        name: 'A',
        kind: 'hose',
        size: { say: [{ value: 0.0254, kind: 'bore' }] },
        length_m: 3.048,
        count: 2,
      },
    ] as const;
    const rows = (units: 'metric' | 'inch') => pickTable('From stock', picks, units).rows;
    expect(rows('inch')).toEqual([['A', 'hose', '1 in', '10 ft', '2']]);
    expect(rows('metric')).toEqual([['A', 'hose', '25.4 mm (1 in)', '3.05 m', '2']]);
  });
});

describe('passes and what to expect', () => {
  const pass = {
    number: 1,
    layer: 1,
    track: 1,
    offset_mm: 0,
    from_mm: 0,
    to_mm: 6000,
    current_A: 900,
    arc_voltage_V: 42,
    push_angle_deg: 45,
    travel_mm_per_min: 508,
    set_by_gauge: false,
    depth_mm: { p05: 5, p50: 6, p95: 7 },
    dwell_s: 0.5,
  };
  it('are set in the units at the head of the column', () => {
    const plan = {
      passes: [pass, { ...pass, number: 2, current_A: 800, set_by_gauge: true }],
    } as unknown as Plan;
    expect(passTable(plan, 'metric').rows.map((cells) => cells.slice(3))).toEqual([
      ['900', '508', '0.5', '6.0 (5.0–7.0)'],
      ['800', 'by gauge', '0.5', '6.0 (5.0–7.0)'],
    ]);
    expect(passTable(plan, 'inch').rows[0]!.slice(4)).toEqual(['20', '0.5', '0.24 (0.20–0.28)']);
  });

  it('are brought and expected as the plan has it', () => {
    const plan = {
      floor_depth_mm: { p05: 9, p50: 10, p95: 11 },
      width_mm: { p05: 17, p50: 18, p95: 19 },
      electrodes_used: { mean: 2, p50: 2, p90: 2.4 },
      arc_time_s: { mean: 92, p50: 90, p90: 100 },
      job_time_s: { mean: 210, p50: 200, p90: 240 },
      loss_length_mm: 25.4,
    } as unknown as Plan;
    const values = (units: 'metric' | 'inch') =>
      expectationFigures(plan, units).map(({ value, unit, note }) => [value, unit, note]);
    expect(values('metric')).toEqual([
      ['10.0', 'mm', '90 in 100: 9.0 to 11.0'],
      ['18.0', 'mm', '90 in 100: 17.0 to 19.0'],
      ['3', undefined, 'mean 2.0, half the time at most 2'],
      ['1 min 30 s', undefined, 'whole job 3 min 20 s; mean 3 min 30 s, 9 in 10 within 4 min'],
      ['25.4', 'mm', 'stays ungouged'],
    ]);
    expect(values('inch')[4]).toEqual(['1.00', 'in', 'stays ungouged']);
  });
});

describe('hazards', () => {
  const held: HazardRow = {
    id: 'a',
    rule: 'Room for each torch',
    value: 200,
    figure: 283.2,
    unit: 'm3',
    sense: 'least',
    verdict: 'short of the figure named',
    note: 'as stated',
    source: SOURCE,
  };
  const crew = {
    name: 'Crew',
    people: 2,
    shift_min: 480,
    quiet_min: 60,
    tasks: [
      {
        name: 'Gouging',
        time_min: 30,
        level_dBA: { least: 100, most: 110 },
        measured: false,
        osha_time_min: 120,
        niosh_time_min: 1.5,
        source: SOURCE,
      },
    ],
    five_dB: { pel_dose_percent: { least: 10, most: 25 } },
    three_dB: { exposure_level_dBA: { least: 88, most: 98 } },
    rows: [{ ...held, unit: 'dBA', value: 92, figure: 90, sense: 'most', verdict: 'over the figure named' }],
  } as unknown as CrewNoiseReport;

  it('hold values against figures with the way they bound', () => {
    expect(verdictTable('Air', [held], 'metric').rows).toEqual([
      [
        'Room for each torch',
        '200 m3',
        'at least 283 m3',
        'short of the figure named',
        'as stated; a test (derived)',
      ],
    ]);
    expect(verdictTable('Air', [held], 'inch').rows[0]!.slice(1, 3)).toEqual([
      '7060 ft3',
      'at least 10000 ft3',
    ]);
    expect(breachTexts([{ ...held, of: 'Fume and gas' }], 'metric')).toEqual([
      'Fume and gas, short of the figure named: Room for each torch 200 m3 (at least 283 m3).',
    ]);
  });

  it('tell noise by crew with both families apart', () => {
    const { rows, caption } = noiseTable({ ...crew, stated: true }, 'metric');
    expect(caption).toBe('Noise: Crew, 2 people, shift 8 h');
    expect(rows).toEqual([
      ['Gouging', '30 min', '100.0 to 110.0 dBA', '2 h set against it', '1 min 30 s set against it'],
      ['Whole shift', '8 h', '1 h quiet', 'dose 10 to 25 %', 'L_EX,8h 88.0 to 98.0 dBA'],
    ]);
    expect(crewTables([crew], 'metric')[0]!.rows[0]!.slice(1, 3)).toEqual([
      'at most 90.0 dBA',
      '92.0 dBA: over the figure named',
    ]);
    expect(rangeText({ least: 85, most: 85 }, 'dBA', 'metric')).toBe('85.0 dBA');
  });
});

describe('money and metal', () => {
  const report = {
    currency: 'EUR',
    priced: true,
    unpriced: [],
    seam_length_m: 3.048,
    items: [
      { part: 'labour', title: 'Labour', cost: { mean: 304.8 }, cost_share: 0.75 },
      { part: 'hire', title: 'Hire', cost: { mean: 0 }, cost_share: 0 },
    ],
    extra: [
      {
        deeper_mm: 2,
        wider_mm: 0,
        weld_metal_kg: 4.5359237,
        weld_metal_percent: 12.4,
        time_s: 5400,
        cost: 120,
        cost_per_m: 40,
      },
    ],
  } as unknown as CostReport;

  it('are told by the metre or the foot, in kilograms or pounds', () => {
    expect(itemTable(report, 'metric')[0]?.rows).toEqual([['Labour', '305 EUR', '100 EUR', '75 %']]);
    expect(itemTable(report, 'inch')[0]?.rows).toEqual([['Labour', '305 EUR', '30.5 EUR', '75 %']]);
    expect(extraTable(report, 'metric').rows).toEqual([
      ['2.0 mm', '–', '+4.54 kg', '+12 %', '+1 h 30 min', '+120 EUR'],
    ]);
    expect(extraTable(report, 'inch').rows[0]!.slice(0, 3)).toEqual(['0.08 in', '–', '+10.0 lb']);
    expect(perLength(100, 'inch')).toBeCloseTo(30.48, 12);
    expect(formatStated(0.45359237, 'kg', 'inch')).toBe('1.00 lb');
    expect(formatStated(645.16, 'mm2', 'inch')).toBe('1.000 in²');
    expect(formatStated(645.16, 'mm2', 'metric')).toBe('645.2 mm²');
    expect(sharePercent(0.004)).toBe('< 1 %');
    const skin = { gouged_area_mm2: 100, ground_area_mm2: 120, added_percent: 20, refill_kg: 5, added_kg: 1 };
    expect(skinText({ skin } as HeatReport, 'metric')).toBe(
      'The section grows from 100 mm² to 120 mm², 20 % more to fill: 5.00 kg of weld metal for the whole seam, 1.00 kg of it for the grinding.',
    );
  });
});
