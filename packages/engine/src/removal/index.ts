export {
  beliefOfElectrode,
  type DepthNode,
  type ElectrodeBelief,
  type KnowledgeName,
  type LevelNode,
  middleLaw,
  type RemovalBelief,
  type SpreadLevels,
  seamCorrelation,
  widestBelief,
} from './belief.ts';
export { type CurrentRange, currentRangeOf } from './current-range.ts';
export { cutOffNormal, depthCeiling, depthWithinCeiling } from './depth-ceiling.ts';
export { processEasings } from './ease-process.ts';
export { electrodeName } from './electrode-name.ts';
export { depthObservation, fitRemovalPrior, type RemovalRow, type RowFit } from './fit-prior.ts';
export { lnDepthParts, type Prediction, predictDepth, predictWear, predictWidth } from './prediction.ts';
export { PASS_DEPTH_MOST, processLimits, REMOVAL_SHARE_MOST } from './process-limits.ts';
export { publishedBelief } from './published-belief.ts';
export { PUBLISHED_PRIOR } from './published-prior.ts';
export { depthRegressors, type PassSetting, specificEnergy } from './setting.ts';
export { lossLength, startDwell } from './start-and-loss.ts';
export {
  OTHER_METAL,
  OTHER_POSITION,
  SEAM_RANGE,
  STARTING_DEPTH,
  STARTING_WEAR,
  STARTING_WIDTH,
  type StartingSpread,
  startingDensity,
} from './starting-spread.ts';
