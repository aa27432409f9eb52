import type { ThermalMetal } from '../material/index.ts';
import { erf } from '../numeric/index.ts';

/** A plate under a groove as the quick estimate of its back face sees it. */
export interface BackFaceInput {
  readonly metal: ThermalMetal;
  /** Thickness of the plate [m]. */
  readonly thickness: number;
  /** Plate left under the groove's floor [m]. */
  readonly ligament: number;
  /** Width of the cut that the heat is given to [m]. */
  readonly width: number;
  /** Heat that the plate keeps of one pass [J/m]. */
  readonly kept: number;
  /** Temperature of the plate before the first pass [K]. */
  readonly start: number;
  /** Passes on the same place [-]. */
  readonly passes: number;
  /** Least time from one pass to the next [s]. */
  readonly interval: number;
  /** Temperature beside the groove that no later pass starts above [K]. */
  readonly interpassMost: number;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Width of the bracket, in ln of the time, at which the flat top of the curve is taken [-]. */
const TOP_WIDTH = 0.02;
/** Temperature at which heat of earlier passes is let spread: the diffusivity falls as steel gets hotter [K]. */
const RESIDUAL = 273.15 + 400;

/** Place of a temperature in the metal's table. */
function placeOf(metal: ThermalMetal, temperature: number): number {
  const last = metal.enthalpy.length - 1.001;
  return Math.min(last, Math.max(0, (temperature - metal.start) / metal.step));
}

function heatAt(metal: ThermalMetal, temperature: number): number {
  const place = placeOf(metal, temperature);
  const low = Math.floor(place);
  const { [low]: first = 0, [low + 1]: second = 0 } = metal.enthalpy;
  return first + (second - first) * (place - low);
}

/** Temperature of a heat content, by halving over the rising table. */
function temperatureAt(metal: ThermalMetal, heat: number): number {
  const { enthalpy, start, step } = metal;
  let low = 0;
  let high = enthalpy.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (enthalpy[middle]! > heat) high = middle;
    else low = middle;
  }
  const part = (heat - enthalpy[low]!) / (enthalpy[high]! - enthalpy[low]!);
  return start + step * (low + Math.min(1, Math.max(0, part)));
}

/** Diffusivity at the temperature that residual heat is reckoned with [m2/s]. */
function diffusivity(metal: ThermalMetal): number {
  const low = Math.floor(placeOf(metal, RESIDUAL));
  return (metal.conductivity[low]! * metal.step) / (metal.enthalpy[low + 1]! - metal.enthalpy[low]!);
}

/** Share of the evened-out heat content that the back face has under a strip, at a time in units of L2/a. */
function shareAt(time: number, ratio: number): number {
  let sum = 1;
  for (let n = 1; n <= 40; n += 1) {
    const term = 2 * Math.exp(-n * n * Math.PI ** 2 * time);
    sum += n % 2 === 0 ? term : -term;
    if (term < 1e-9) break;
  }
  return erf(ratio / (4 * Math.sqrt(time))) * sum;
}

/** Greatest of that share over time; it rises once and falls once. */
function greatestShare(ratio: number): number {
  let low = Math.log(0.02);
  let high = Math.log(2 + ratio * ratio);
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let ofLeft = shareAt(Math.exp(left), ratio);
  let ofRight = shareAt(Math.exp(right), ratio);
  while (high - low > TOP_WIDTH) {
    if (ofLeft < ofRight) {
      low = left;
      left = right;
      ofLeft = ofRight;
      right = low + GOLDEN * (high - low);
      ofRight = shareAt(Math.exp(right), ratio);
    } else {
      high = right;
      right = left;
      ofRight = ofLeft;
      left = high - GOLDEN * (high - low);
      ofLeft = shareAt(Math.exp(left), ratio);
    }
  }
  return Math.max(ofLeft, ofRight);
}

/**
 * Upper estimate of the highest temperature of the back face under a groove, in closed form.
 *
 * The kept heat of a pass is a strip as wide as the cut on a plate as thin as the ligament, with closed faces; its
 * heat content at the back is that of an image sum, at its highest. Earlier passes add what is left of them in the
 * whole plate, or the pass starts from the greatest interpass temperature, whichever is less. The plate beside the
 * groove is thicker than the ligament and takes heat away, so the true face stays cooler.
 *
 * @param input - metal, plate, cut, heat, passes and times [record], each > 0
 * @returns temperature [K]
 * @source derived: strip source on a plate by image sums, Carslaw and Jaeger ch. 10, in terms of heat content
 * @example
 * backFaceEstimate({ metal: thermalOf('carbon_steel'), thickness: 0.03, ligament: 0.02, width: 0.016, kept: 1e6, start: 293.15, passes: 1, interval: 300, interpassMost: 523.15 }) // => 561.1...
 */
export function backFaceEstimate(input: BackFaceInput): number {
  const { metal, thickness, ligament, width, kept, start, passes, interval, interpassMost } = input;
  const pulse = (kept / (width * ligament)) * greatestShare(width / ligament);
  const spread = 4 * Math.PI * diffusivity(metal) * interval;
  let left = 0;
  for (let earlier = 1; earlier < passes; earlier += 1)
    left += kept / (thickness * Math.sqrt(spread * earlier));
  const before = heatAt(metal, start) + left;
  const held = heatAt(metal, Math.max(start, interpassMost));
  return temperatureAt(metal, (passes > 1 ? Math.min(before, held) : before) + pulse);
}
