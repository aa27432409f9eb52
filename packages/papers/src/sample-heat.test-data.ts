import type { HeatAnswer, HeatField, HeatFrame, HeatRange, HeatReport } from '@furrow/engine';

const range = (middle: number, spread: number): HeatRange => ({
  least: middle - spread,
  middle,
  most: middle + spread,
});

const MEMORY = { text: 'a handbook', provenance: 'memory' } as const;
const CONFIRMED = { text: 'EN 1011-2:2001, method B', provenance: 'confirmed' } as const;
const STATED = { text: 'heat.back_face_most', provenance: 'job file' } as const;

/** Times of the two passes of the sample at its station [s]. */
const AT: readonly number[] = [60, 300];
const DIFFUSIVITY = 9e-6;
const HALF_WIDTH = 0.008;

/** A heat report written by hand for papers alone, so that their tests do not wait for the solver. */
export function sampleHeat(changes: Partial<HeatReport> = {}): HeatAnswer {
  return { report: { ...sampleHeatReport(), ...changes }, field: sampleField() };
}

function sampleHeatReport(): HeatReport {
  return {
    quality: 'refined',
    grid_error_percent: 0.8,
    station_mm: 3000,
    kept_share: range(0.35, 0.15),
    assumptions: [
      { topic: 'Heat kept', text: '20 to 50 % of the arc energy stays in the plate', source: MEMORY },
      { topic: 'Air', text: '20 degC', source: STATED },
    ],
    passes: AT.map((at, index) => ({
      number: index + 1,
      gross_kJ_per_mm: 3.1,
      with_melt_kJ_per_mm: 0.9,
      kept_kJ_per_mm: range(1.08, 0.46),
      reaching_share: range(0.67, 0.1),
      at_station_s: range(at, index * 5),
      before_degC: range(20 + 90 * index, 20 * index),
      wait_s: range(index * 12, index * 12),
    })),
    transformation: { ac1_degC: 718, ac3_degC: 842, source: MEMORY },
    width_past_ac1_mm: range(6.2, 1.4),
    width_past_ac3_mm: range(4.1, 1.1),
    depth_past_ac1_mm: range(2.9, 0.7),
    back_face_degC: range(148, 31),
    t85_s: range(4.2, 1.3),
    cooling_formulas: [
      {
        name: 'EN 1011-2, three-dimensional',
        t85_s: range(3.6, 1.2),
        inside_range: true,
        note: 'as for a weld of this heat',
        source: CONFIRMED,
      },
      {
        name: 'EN 1011-2, two-dimensional',
        t85_s: null,
        inside_range: false,
        note: 'the plate is too thick',
        source: CONFIRMED,
      },
    ],
    cooling_remarks: ['The groove leaves less plate to carry the heat away than a flat surface has.'],
    hardness: {
      least_HV: 250,
      most_HV: 430,
      formulas: [{ name: 'a formula of welds', value_HV: range(340, 40), source: MEMORY }],
      skin_HV: 600,
      note: 'formulas of welds, used here for a gouge',
    },
    hardness_missing: null,
    preheat: {
      methods: [
        {
          method: 'EN 1011-2, method B',
          temperature_degC: 85,
          parts: [
            { name: 'carbon equivalent CET', value: 0.3, unit: '%' },
            { name: 'plate thickness', value: 70, unit: 'degC' },
          ],
          inside_range: true,
          remarks: [],
          source: CONFIRMED,
        },
        {
          method: 'Hydrogen control',
          temperature_degC: null,
          parts: [],
          inside_range: false,
          remarks: ['The composition is not known well enough.'],
          source: MEMORY,
        },
      ],
      differences: ['One method counts the heat of the weld, the other the restraint.'],
      gouging: {
        temperature_degC: 85,
        stated: false,
        known: true,
        source: { text: 'as for the re-weld', provenance: 'common practice' },
      },
    },
    preheat_missing: null,
    skin: {
      allowance_mm: 1.5,
      source: { text: 'ASME PCC-2', provenance: 'confirmed' },
      gouged_area_mm2: 168,
      ground_area_mm2: 214,
      added_percent: 27.4,
      refill_kg: 10.1,
      added_kg: 2.2,
    },
    balance: {
      given_kJ_per_m: 2160,
      cut_out_kJ_per_m: 310,
      lost_kJ_per_m: 290,
      stored_kJ_per_m: 1560,
      error: 3e-8,
    },
    limits: [
      {
        id: 'back_face',
        title: 'Back face',
        demand: 179,
        capacity: 200,
        unit: 'degC',
        sense: 'most',
        verdict: 'tight',
        hard: true,
        source: STATED,
        remedy: 'less heat in each pass, or a wait between passes',
        sensitivity: [],
      },
    ],
    cautions: ['The plate stays hot for an hour after the last pass.'],
  };
}

/** Line sources under the surface of a thick plate: a field of the right looks, not of the right numbers. */
function sampleField(): HeatField {
  const across = Float64Array.from({ length: 61 }, (_, index) => (index - 30) * 0.002);
  const below = Float64Array.from({ length: 32 }, (_, index) => (index + 0.5) * 0.001);
  const times = [0, 59, 60, 62, 65, 70, 80, 120, 200, 299, 300, 302, 306, 315, 340, 500, 900];
  return { across, below, frames: times.map((time) => frameAt(time, across, below)) };
}

function frameAt(time: number, across: Float64Array, below: Float64Array): HeatFrame {
  const pass = AT.filter((at) => at <= time).length;
  const floor = Float32Array.from(across, (offset) =>
    Math.max(0, 0.007 * pass * (1 - (offset / HALF_WIDTH) ** 2)),
  );
  const temperature = new Float32Array(across.length * below.length);
  below.forEach((depth, row) => {
    across.forEach((offset, column) => {
      const heat = AT.filter((at) => at <= time).reduce((sum, at, index) => {
        const spread = 4 * DIFFUSIVITY * (time - at + 1);
        const distance = offset ** 2 + (depth - 0.007 * (index + 1)) ** 2;
        return sum + (0.09 / spread) * Math.exp(-distance / spread);
      }, 0);
      const cut = depth < (floor[column] ?? 0);
      temperature[row * across.length + column] = cut ? Number.NaN : Math.min(1790, 293 + heat);
    });
  });
  return { time, pass, temperature, floor };
}
