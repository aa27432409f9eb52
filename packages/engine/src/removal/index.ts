export { type CurrentRange, currentRangeOf } from './current-range.ts';
export { depthObservation, fitRemovalPrior, type RemovalBelief, type RemovalRow } from './fit-prior.ts';
export { publishedPosterior, type RemovalPosterior, updatePosterior } from './posterior.ts';
export { type Prediction, predictDepth, predictWear, predictWidth } from './prediction.ts';
export { PASS_DEPTH_MOST, processLimits, REMOVAL_SHARE_MOST } from './process-limits.ts';
export { PUBLISHED_PRIOR } from './published-prior.ts';
export { depthRegressors, type PassSetting, specificEnergy } from './setting.ts';
export { lossLength, startDwell } from './start-and-loss.ts';
