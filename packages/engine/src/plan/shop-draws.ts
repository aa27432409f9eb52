import {
  coefficientFactor,
  type DrawStream,
  drawStream,
  type RegressionBelief,
  stratifiedNormals,
} from '../numeric/index.ts';
import type { RemovalBelief } from '../removal/index.ts';
import { conjugateBelief } from './conjugate-belief.ts';

/** Standard deviation of the depth factor of later passes in a track, about 1 [-] (judgement, no source). */
export const LATER_PASS_SD = 0.1;

/**
 * Many possible shops: what is common to all passes of a job, one value per shop, and noise per pass.
 * Every candidate meets the same shops and the same noise, so that differences between candidates are theirs.
 */
export interface ShopDraws {
  /** How many shops [-]. */
  readonly count: number;
  /** Level a of the depth law [-]. */
  readonly level: Float64Array;
  /** Slope b of the depth law [-]. */
  readonly slope: Float64Array;
  /** Angle coefficient c of the depth law [-]. */
  readonly angle: Float64Array;
  /** Standard deviation of one pass in ln depth [-]. */
  readonly spread: Float64Array;
  /** Width less the electrode diameter, never below 0 [m]. */
  readonly extraWidth: Float64Array;
  /** Depth factor of later passes in a track [-]. */
  readonly laterFactor: Float64Array;
  /** Electrode volume burnt per ampere-second [m3/(A s)]. */
  readonly wear: Float64Array;
  /** Standard normal noise of the pass with this index, one value per shop. */
  readonly passNoise: (index: number) => Float64Array;
  /**
   * Depth over electrode diameter that the pass with this index digs at specific energy 1 and this angle term, one
   * value per shop: the part of the depth law that is the same for every candidate.
   */
  readonly passLift: (index: number, angleTerm: number) => Float64Array;
  /** How many times deeper a pass digs at this ln specific energy than at specific energy 1, one value per shop. */
  readonly energyGain: (logEnergy: number) => Float64Array;
  /** Standard normal noise of the gauge reading with this index, one value per shop. */
  readonly gaugeNoise: (index: number) => Float64Array;
}

/** Seeds of the noise series lie this far apart, so that none meets another. */
const SERIES_STRIDE = 7919;
const GAUGE_SERIES = 5003;

/**
 * Draws shops from what is known of removal; the same seed gives the same shops.
 *
 * @param posterior - what is known of removal [record], from `publishedBelief`
 * @param count - how many shops [-], at least 1
 * @param seed - the seed [-], a whole number from 0 to 2^31 - 1
 * @returns the shops [record]
 * @source derived: stratified draws from the normal-inverse-gamma beliefs
 * @example
 * drawShops(publishedBelief(metalOf('carbon_steel'), 'flat'), 3, 1).level.length // => 3
 */
export function drawShops(posterior: RemovalBelief, count: number, seed: number): ShopDraws {
  const stream = drawStream(seed);
  const { depth, extraWidth, wear } = conjugateBelief(posterior);
  const law = drawCoefficients(depth, count, stream);
  const passNoise = noiseSeries(count, seed, 1);
  const width = drawResponse(extraWidth, count, stream);
  return {
    count,
    level: law.coefficients[0]!,
    slope: law.coefficients[1]!,
    angle: law.coefficients[2]!,
    spread: law.spread,
    extraWidth: width.map((value) => Math.max(0, value)),
    laterFactor: stratifiedNormals(stream, count).map((z) => Math.max(0.1, 1 + LATER_PASS_SD * z)),
    wear: drawResponse(wear, count, stream).map(Math.exp),
    passNoise,
    passLift: liftSeries(law, passNoise),
    energyGain: gainOf(law.coefficients[1]!),
    gaugeNoise: noiseSeries(count, seed, GAUGE_SERIES),
  };
}

/** Coefficients of a law and the spread of its noise, one value per shop each. */
interface LawDraws {
  readonly coefficients: readonly Float64Array[];
  readonly spread: Float64Array;
}

function drawCoefficients(belief: RegressionBelief, count: number, stream: DrawStream): LawDraws {
  const spread = Float64Array.from({ length: count }, () =>
    Math.sqrt(belief.scale / stream.gamma(belief.shape)),
  );
  const factor = coefficientFactor(belief);
  const normals = belief.mean.map(() => stratifiedNormals(stream, count));
  const coefficients = belief.mean.map((mean, row) =>
    Float64Array.from({ length: count }, (_, shop) => {
      const pull = factor[row]!.reduce((sum, value, column) => sum + value * normals[column]![shop]!, 0);
      return mean + spread[shop]! * pull;
    }),
  );
  return { coefficients, spread };
}

/** Draws one response of a belief with a single coefficient: its level and its own noise. */
function drawResponse(belief: RegressionBelief, count: number, stream: DrawStream): Float64Array {
  const { coefficients, spread } = drawCoefficients(belief, count, stream);
  const noise = stratifiedNormals(stream, count);
  return coefficients[0]!.map((level, shop) => level + spread[shop]! * noise[shop]!);
}

function noiseSeries(count: number, seed: number, series: number): (index: number) => Float64Array {
  const made = new Map<number, Float64Array>();
  return (index) => {
    const known = made.get(index);
    if (known !== undefined) return known;
    const fresh = stratifiedNormals(drawStream((seed + (index + series) * SERIES_STRIDE) % 2 ** 31), count);
    made.set(index, fresh);
    return fresh;
  };
}

/** Works a pass's lift out once; a job has one angle, so those of the latest one are kept. */
function liftSeries(
  law: LawDraws,
  passNoise: (index: number) => Float64Array,
): (index: number, angleTerm: number) => Float64Array {
  const [level, , angle] = law.coefficients as [Float64Array, Float64Array, Float64Array];
  const made = new Map<number, Float64Array>();
  let madeFor = Number.NaN;
  return (index, angleTerm) => {
    if (angleTerm !== madeFor) made.clear();
    madeFor = angleTerm;
    const known = made.get(index);
    if (known !== undefined) return known;
    const noise = passNoise(index);
    const lift = new Float64Array(noise.length);
    for (let shop = 0; shop < lift.length; shop += 1) {
      lift[shop] = Math.exp(level[shop]! + angle[shop]! * angleTerm + law.spread[shop]! * noise[shop]!);
    }
    made.set(index, lift);
    return lift;
  };
}

/** The gain of the latest energy is kept: the layers of a blind plan, and the plans tried after one start, share it. */
function gainOf(slope: Float64Array): (logEnergy: number) => Float64Array {
  let gain = new Float64Array(slope.length);
  let madeFor = Number.NaN;
  return (logEnergy) => {
    if (logEnergy === madeFor) return gain;
    gain = new Float64Array(slope.length);
    for (let shop = 0; shop < gain.length; shop += 1) gain[shop] = Math.exp(slope[shop]! * logEnergy);
    madeFor = logEnergy;
    return gain;
  };
}
