/**
 * A floor that is there already and how passes cut from here on, in many shops that may be: what the rest of a job or a
 * recut is planned from. Lists over shops and places hold shop after shop.
 */
export interface FloorShops {
  /** How many shops [-]. */
  readonly count: number;
  /** Places along the seam, rising [m]. */
  readonly at: Float64Array;
  /** Depth that is there, per shop and place [m]. */
  readonly depth: Float64Array;
  /** ln of the depth in metres that a pass at a travel of 1 m/s cuts in the middle, per shop [-]. */
  readonly lift: Float64Array;
  /** Power by which depth falls with travel, per shop [-]. */
  readonly power: Float64Array;
  /** Part of that depth that a further pass cuts at each place, per shop and place; passes count from 0 [-]. */
  readonly further: (pass: number) => Float64Array;
  /** Standard normal error of a reading before a further pass, per shop [-]. */
  readonly gaugeError: Float64Array;
}
