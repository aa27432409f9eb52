import { STAGE_NUMBERS, STAGES_MOST } from './diffusion-layout.ts';

/** Damping, so that quick modes die out within a step. */
const DAMPING = 2 / 13;
/** Stages squared over step times stiffness, with a little to spare. */
const STAGES_PER_STIFFNESS = 1.54;

/** Longest step times spectral radius that the most stages bear [-]. */
export const STIFFNESS_MOST = ((STAGES_MOST - 1) ** 2 - 1) / STAGES_PER_STIFFNESS;

// reused by every step, so that nothing is allocated on the way
const values = new Float64Array(STAGES_MOST + 1);
const weights = new Float64Array(STAGES_MOST + 1);

/** Fewest stages with which a step is stable, at least 2; step times the spectral radius of the problem given. */
export function stagesFor(stepTimesStiffness: number): number {
  return Math.max(2, 1 + Math.floor(Math.sqrt(1 + STAGES_PER_STIFFNESS * stepTimesStiffness)));
}

/**
 * Lays down the numbers of each stage of a step: the Runge-Kutta-Chebyshev formulas of second order,
 * Y(j) = c0 Y(0) + c1 Y(j-1) + c2 Y(j-2) + cf F(j-1) + cg F(0), with the step inside cf and cg.
 */
export function chebyshevStages(stages: number, duration: number, into: Float64Array): void {
  const w0 = 1 + DAMPING / stages ** 2;
  const w1 = fillPolynomials(stages, w0);
  into.fill(0, 0, STAGE_NUMBERS);
  into[0] = 1;
  into[4] = weights[1]! * w1 * duration;
  for (let j = 2; j <= stages; j += 1) {
    const mu = (2 * weights[j]! * w0) / weights[j - 1]!;
    const nu = -weights[j]! / weights[j - 2]!;
    const scaled = (2 * weights[j]! * w1) / weights[j - 1]!;
    const at = STAGE_NUMBERS * (j - 1);
    into[at] = 1 - mu - nu;
    into[at + 1] = mu;
    into[at + 2] = nu;
    into[at + 3] = scaled * duration;
    into[at + 4] = -(1 - weights[j - 1]! * values[j - 1]!) * scaled * duration;
  }
}

/** Chebyshev polynomials up to a degree, and the weights of the stages; returns slope over bend of the last. */
function fillPolynomials(degree: number, x: number): number {
  let [slopeBefore, slope] = [0, 1];
  let [bendBefore, bend] = [0, 0];
  values[0] = 1;
  values[1] = x;
  for (let j = 2; j <= degree; j += 1) {
    values[j] = 2 * x * values[j - 1]! - values[j - 2]!;
    const steeper = 2 * values[j - 1]! + 2 * x * slope - slopeBefore;
    const bent = 4 * slope + 2 * x * bend - bendBefore;
    [slopeBefore, slope, bendBefore, bend] = [slope, steeper, bend, bent];
    weights[j] = bend / slope ** 2;
  }
  weights[0] = weights[2]!;
  weights[1] = weights[2]!;
  return slope / bend;
}
