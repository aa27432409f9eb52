import { type HeatField, type HeatFrame, inUnit } from '@furrow/engine';

/** How far beside the cut the surface is followed [m]. */
export const BESIDE_CUT = 0.01;

/** Temperatures that are followed through time; lists of equal length. */
export interface HeatCourse {
  readonly time_s: readonly number[];
  /** Hottest place of the back face [degC]. */
  readonly back_degC: readonly number[];
  /** Surface of the plate beside the finished cut, at the hotter side [degC]. */
  readonly beside_degC: readonly number[];
}

/** Follows the back face, and the surface beside the groove, through all moments of a field. */
export function heatCourse(field: HeatField): HeatCourse {
  const last = field.frames.at(-1)?.floor ?? new Float32Array();
  const cut = [...field.across].filter((_, index) => (last[index] ?? 0) > 0);
  const sides = [Math.min(0, ...cut) - BESIDE_CUT, Math.max(0, ...cut) + BESIDE_CUT];
  const columns = sides.map((place) => nearest(field.across, place));
  return {
    time_s: field.frames.map(({ time }) => time),
    back_degC: field.frames.map((frame) => backFaceOf(field, frame)),
    beside_degC: field.frames.map(({ temperature }) =>
      inUnit(Math.max(...columns.map((column) => temperature[column] ?? Number.NaN)), 'degC'),
    ),
  };
}

/** Hottest place of the back face at one moment [degC]. */
export function backFaceOf({ across, below }: HeatField, { temperature }: HeatFrame): number {
  const row = temperature.subarray(across.length * (below.length - 1), across.length * below.length);
  return hottestOf(row);
}

/** Hottest of some cells, those without metal left out [degC]. */
export function hottestOf(temperatures: Float32Array): number {
  const hottest = temperatures.reduce(
    (most, value) => (Number.isNaN(value) ? most : Math.max(most, value)),
    Number.NEGATIVE_INFINITY,
  );
  return inUnit(hottest, 'degC');
}

function nearest(places: Float64Array, wanted: number): number {
  let best = 0;
  places.forEach((place, index) => {
    if (Math.abs(place - wanted) < Math.abs((places[best] ?? 0) - wanted)) best = index;
  });
  return best;
}
