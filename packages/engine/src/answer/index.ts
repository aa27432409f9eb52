export { answerCost, type CostOptions } from './cost/answer-cost.ts';
export { tryCostChanges } from './cost/answer-cost-changes.ts';
export { coolingForCost } from './cost/cooling-for-cost.ts';
export type { CostChangeId } from './cost/cost-change.ts';
export { answerHazard } from './hazard/answer-hazard.ts';
export { answerHeat, type HeatQuestion } from './heat/answer-heat.ts';
export type { HeatAnswer } from './heat/heat-answer.ts';
export { answerJob, type JobQuestion } from './job/answer-job.ts';
export { answerKnowledge } from './knowledge/answer-knowledge.ts';
export { answerNextTrial, type JobAtHand } from './knowledge/answer-next-trial.ts';
export { beliefOfJob } from './knowledge/belief-of-job.ts';
export { answerRun, REHEARSAL_MARK, type RunAnswer, type RunQuestion } from './run/answer-run.ts';
export { answerGauge, type GaugeOfSurvey, gaugeFrom, gaugeOfSurvey } from './survey/answer-gauge.ts';
export { answerSurvey, type SurveyInput, type SurveyQuestion } from './survey/answer-survey.ts';
export { type DepthByLog, depthByLog, type LogOfRun } from './survey/depth-by-log.ts';
export {
  entryOfGroove,
  type GaugedGroove,
  type RanPass,
  ranByHand,
  ranPasses,
} from './survey/groove-entry.ts';
