import type { DrawStream } from '../numeric/index.ts';

/**
 * Draws courses of the standardised process along the seam at given places.
 *
 * The Matern 3/2 process is two states, value and slope, that go from place to place exactly as a linear Gaussian step.
 *
 * @param at - places [m], rising, at least one
 * @param range - range of the process [m], > 0
 * @param count - how many courses [-], at least 1
 * @param stream - where the randomness comes from [record], an open stream
 * @returns values, course by course: the value of course `c` at place `p` stands at `c * at.length + p` [list]
 * @source Hartikainen and Särkkä, Kalman filtering and smoothing solutions to temporal Gaussian process regression models (2010), Matern 3/2
 * @example
 * drawSeamCourses([0, 1e-9], 0.25, 1, drawStream(1)).map((value, i, all) => Math.round(1e6 * (value - all[0])))[1] // => 0
 */
export function drawSeamCourses(
  at: ArrayLike<number>,
  range: number,
  count: number,
  stream: DrawStream,
): Float64Array {
  const places = at.length;
  const steps = new Float64Array(7 * places);
  for (let place = 1; place < places; place += 1) {
    const t = (Math.sqrt(3) * (at[place]! - at[place - 1]!)) / range;
    const decay = Math.exp(-t);
    const [aa, ab, ba, bb] = [decay * (1 + t), decay * t, -decay * t, decay * (1 - t)];
    const laa = Math.sqrt(Math.max(0, 1 - aa * aa - ab * ab));
    const lab = laa > 0 ? -(aa * ba + ab * bb) / laa : 0;
    const lbb = Math.sqrt(Math.max(0, 1 - ba * ba - bb * bb - lab * lab));
    steps.set([aa, ab, ba, bb, laa, lab, lbb], 7 * place);
  }
  const values = new Float64Array(places * count);
  for (let course = 0; course < count; course += 1) {
    const o = course * places;
    let value = stream.normal();
    let slope = stream.normal();
    values[o] = value;
    for (let place = 1; place < places; place += 1) {
      const s = 7 * place;
      const first = stream.normal();
      const next = steps[s]! * value + steps[s + 1]! * slope + steps[s + 4]! * first;
      slope =
        steps[s + 2]! * value +
        steps[s + 3]! * slope +
        steps[s + 5]! * first +
        steps[s + 6]! * stream.normal();
      value = next;
      values[o + place] = value;
    }
  }
  return values;
}
