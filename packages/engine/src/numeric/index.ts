export { scaledBesselI0 } from './bessel-i0.ts';
export { bisect } from './bisect.ts';
export { bracketedRoot } from './bracketed-root.ts';
export {
  coefficientFactor,
  type Observation,
  predict,
  type RegressionBelief,
  type StudentPrediction,
  updateBelief,
} from './conjugate-regression.ts';
export { type DrawStream, drawStream, stratifiedNormals } from './draw-stream.ts';
export { erf } from './erf.ts';
export { fisherProbability } from './fisher-f.ts';
export { type IntegrateOptions, integrateUntil, type Trajectory } from './integrate-until.ts';
export { STIFFNESS_MOST } from './kernel/chebyshev-stages.ts';
export {
  type DiffusionKernel,
  type DiffusionSetUp,
  type DiffusionStep,
  diffusionKernel,
} from './kernel/diffusion-kernel.ts';
export type { DiffusionLayout, DiffusionMemory, DiffusionSize } from './kernel/diffusion-layout.ts';
export { compileModule, instanceOf } from './kernel/web-assembly.ts';
export {
  evenWeights,
  type NestedGroup,
  type NestedInformation,
  type NestedModel,
  type NestedPass,
  type NestedPrior,
  type NestedReading,
  type NestedSds,
  type NestedSolution,
  type NestedWeights,
  nestedInformation,
  nestedModel,
  outlierWeights,
  solveNested,
} from './nested-model/nested-model.ts';
export {
  mixtureProbability,
  mixtureQuantile,
  type NormalPart,
  normalProbability,
} from './normal-mixture.ts';
export { normalQuantile } from './normal-quantile.ts';
export { nthLeast } from './nth-least.ts';
export { percentile, percentiles } from './percentile.ts';
export { placeOrder } from './place-order.ts';
export { studentProbability, studentQuantile } from './student-t.ts';
export { symmetricInverse } from './symmetric-inverse.ts';
export { type SpreadMode, type SpreadNode, spreadMode, spreadNodes } from './variance-nodes.ts';
