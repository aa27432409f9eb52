import type { ThermalMetal } from '../material/index.ts';
import { erf, scaledBesselI0 } from '../numeric/index.ts';
import { ZERO_CELSIUS } from '../quantity/index.ts';

/** A plate under a groove as the quick estimate of its back face sees it. */
export interface BackFaceInput {
  readonly metal: ThermalMetal;
  /** Thickness of the plate [m]. */
  readonly thickness: number;
  /** Plate left under the groove's floor [m]. */
  readonly ligament: number;
  /** Nominal width of the pass: twice the radius of its bottom [m]. */
  readonly width: number;
  /** Tracks side by side; several leave a floor that is wider than one pass [-]. */
  readonly tracks: number;
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
/** Images of the round bottom in the back face and itself that are summed [-]. */
const IMAGES = 3;
/** Temperature at which heat of earlier passes is let spread: the diffusivity falls as steel gets hotter [K]. */
const RESIDUAL = ZERO_CELSIUS + 400;

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

/** Greatest value of a curve over the logarithm of time that rises once and falls once. */
function greatest(curve: (time: number) => number, from: number, to: number): number {
  let low = Math.log(from);
  let high = Math.log(to);
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let ofLeft = curve(Math.exp(left));
  let ofRight = curve(Math.exp(right));
  while (high - low > TOP_WIDTH) {
    if (ofLeft < ofRight) {
      low = left;
      left = right;
      ofLeft = ofRight;
      right = low + GOLDEN * (high - low);
      ofRight = curve(Math.exp(right));
    } else {
      high = right;
      right = left;
      ofRight = ofLeft;
      left = high - GOLDEN * (high - low);
      ofLeft = curve(Math.exp(left));
    }
  }
  return Math.max(ofLeft, ofRight);
}

/** Greatest heat content at the back of a plate with a strip of heat on its face, per heat [1/m2]. */
function underStrip(width: number, ligament: number): number {
  const ratio = width / ligament;
  return greatest((time) => shareAt(time, ratio), 0.02, 2 + ratio * ratio) / (width * ligament);
}

/**
 * The same under a round bottom with whole plate on both sides: heat on a cylinder about the bottom's centre, with its
 * images in the back face. What the cylinder's inside would hold of it is added to the rest, as no metal is there. A
 * bottom flatter than a half circle sends its heat into its own wedge only.
 */
function underRound(radius: number, depth: number, ligament: number): number {
  const wedge = Math.PI / (2 * Math.acos(Math.max(0, 1 - depth / radius)));
  const content = (time: number): number => {
    let sum = 0;
    for (let image = 0; image < IMAGES; image += 1) {
      const way = (2 * image + 1) * ligament;
      const bessel = scaledBesselI0(((radius + way) * radius) / (2 * time));
      sum += Math.exp((-way * way) / (4 * time)) * bessel;
    }
    // at least half of the heat leaves the cylinder, and no less than would of heat from its axis
    const outside = Math.max(0.5, Math.exp((-radius * radius) / (4 * time)));
    return sum / (Math.PI * time * outside);
  };
  const reach = (ligament + radius) ** 2;
  return wedge * greatest(content, 0.05 * ligament * ligament, reach);
}

/** The part of a plate under a groove that the heat's way to the back face depends on. */
export type BackFaceShape = Pick<BackFaceInput, 'thickness' | 'ligament' | 'width' | 'tracks'>;

/** Greatest heat content at the back face under one pass, per heat that the plate keeps of it [1/m2]. */
export function backFaceShare({ thickness, ligament, width, tracks }: BackFaceShape): number {
  const depth = thickness - ligament;
  const radius = width / 2;
  // a pass shallower than its radius is only as wide as its chord
  const chord = depth < radius ? 2 * Math.sqrt(depth * (2 * radius - depth)) : width;
  const strip = underStrip(chord, ligament);
  return tracks > 1 ? strip : Math.min(strip, underRound(radius, depth, ligament));
}

/**
 * Upper estimate of the highest temperature of the back face under a groove, in closed form.
 *
 * The kept heat of a pass is a strip as wide as the pass on a plate as thin as the ligament, or, for one track, lies
 * on its round bottom with whole plate on both sides, whichever is less; faces closed, in terms of heat content, at its highest over
 * time. Earlier passes add what is left of them in the whole plate, or the pass starts from the greatest interpass
 * temperature, whichever is less. The plate beside the groove takes more heat away, so the true face stays cooler.
 */
export function backFaceEstimate(input: BackFaceInput, share = backFaceShare(input)): number {
  const { metal, thickness, kept, start, passes, interval, interpassMost } = input;
  const spread = 4 * Math.PI * diffusivity(metal) * interval;
  let left = 0;
  for (let earlier = 1; earlier < passes; earlier += 1)
    left += kept / (thickness * Math.sqrt(spread * earlier));
  const before = heatAt(metal, start) + left;
  const held = heatAt(metal, Math.max(start, interpassMost));
  return temperatureAt(metal, (passes > 1 ? Math.min(before, held) : before) + kept * share);
}
