import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { normalQuantile } from './normal-quantile.ts';

/** Outputs thrown away first: a small seed leaves the first ones badly mixed. */
const WARM_UP = 32;

/** A seeded stream of random draws; the same seed gives the same draws on every machine. */
export interface DrawStream {
  /** Uniform draw, above 0 and below 1 [-]. */
  uniform(): number;
  /** Standard normal draw [-]. */
  normal(): number;
  /** Gamma draw of this shape, scale 1 [-]. */
  gamma(shape: number): number;
}

/**
 * Opens a seeded stream of draws.
 *
 * @param seed - the seed [-], a whole number from 0 to 2^31 - 1
 * @returns the stream [record]
 * @source generator: the library pure-rand (xoroshiro128+); gamma: Marsaglia and Tsang, ACM TOMS 26 (2000) 363-372
 * @example
 * drawStream(1).uniform() === drawStream(1).uniform() // => true
 */
export function drawStream(seed: number): DrawStream {
  return new Stream(seed);
}

/** Methods, not closures: what draws is then compiled once for all streams. */
class Stream implements DrawStream {
  private readonly generator: ReturnType<typeof xoroshiro128plus>;

  constructor(seed: number) {
    this.generator = xoroshiro128plus(seed);
    for (let skipped = 0; skipped < WARM_UP; skipped += 1) this.generator.next();
  }

  uniform(): number {
    for (;;) {
      const value = uniformFloat64(this.generator);
      if (value > 0) return value;
    }
  }

  normal(): number {
    return normalQuantile(this.uniform());
  }

  gamma(shape: number): number {
    if (shape < 1) return this.gamma(shape + 1) * this.uniform() ** (1 / shape);
    const d = shape - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const x = this.normal();
      const v = (1 + c * x) ** 3;
      if (v > 0 && Math.log(this.uniform()) < 0.5 * x * x + d * (1 - v + Math.log(v))) return d * v;
    }
  }
}

/**
 * Stratified standard normal draws: one from each of `count` equally likely slices, in random order.
 *
 * A mean over them varies much less than over plain draws, so fewer are needed.
 *
 * @param stream - where the randomness comes from [record], an open stream
 * @param count - how many [-], at least 1
 * @returns the draws [list]
 * @source McKay, Beckman and Conover, Technometrics 21 (1979) 239-245 (Latin hypercube sampling)
 * @example
 * Math.abs(stratifiedNormals(drawStream(1), 1000).reduce((a, b) => a + b, 0)) < 10 // => true
 */
export function stratifiedNormals(stream: DrawStream, count: number): Float64Array {
  const draws = new Float64Array(count);
  for (let slice = 0; slice < count; slice += 1) {
    draws[slice] = normalQuantile((slice + stream.uniform()) / count);
  }
  for (let last = count - 1; last > 0; last -= 1) {
    const other = Math.floor(stream.uniform() * (last + 1));
    const kept = draws[last]!;
    draws[last] = draws[other]!;
    draws[other] = kept;
  }
  return draws;
}
