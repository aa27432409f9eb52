export { adviceWords } from './advice-words.ts';
export { balanceWords } from './balance-words.ts';
export { boundUnits } from './bound-units.ts';
export { chanceWords } from './chance-words.ts';
export { conductorWords } from './conductor-words.ts';
export { connectionWords } from './connection-words.ts';
export {
  byLength,
  cheaperFrom,
  difference,
  money,
  moneyRange,
  NEVER_IN_COST,
  perLength,
  pricedText,
  sharePercent,
  skinText,
  unpricedText,
  workTime,
  workTimeRange,
} from './cost-words.ts';
export { defaultText, defaultTitle, fieldOf, isPrice } from './default-words.ts';
export { DOUBT_PARTS, doubtWords, worthWords } from './doubt-words.ts';
export { driftWords } from './drift-words.ts';
export {
  actionText,
  deepenText,
  gaugePlaces,
  NARROW_RISK_HEADS,
  RISK_HEADS,
  readingText,
  reasonText,
  riskTexts,
  tryoutText,
} from './gauge-words.ts';
export { GLOSSARY } from './glossary.ts';
export { breachTexts, figureText, noteText, shadeFigure, sourceText } from './hazard-words.ts';
export { jobWords } from './job-words.ts';
export { knowledgeWords, sentenceOf, shortKnowledgeWords } from './knowledge-words.ts';
export { drawnLength, drawnNumber, drawnTolerance, fineNumber, fineStated, fineUnit } from './length-text.ts';
export { limitWords } from './limit-words.ts';
export { nextTrialSetting, nextTrialWords } from './next-trial-words.ts';
export { rangeText } from './range-text.ts';
export { checkBand, checkReading } from './reading-words.ts';
export { gaugeCheckWords, otherPlanWords } from './readings-words.ts';
export { bindingAmounts, constraintTitle, REMEDY_AMOUNTS, REMEDY_COUNTS } from './remedy-words.ts';
export { CHANGE_WORDS, ROUND_TITLES } from './round-words.ts';
export { runRecutWords } from './run-recut-words.ts';
export { elapsedWords, eventName, placeWords, type RunEventKind } from './run-words.ts';
export { STAGE_TITLES } from './stage-words.ts';
export {
  enoughWords,
  GAUGE_PARTS,
  gaugeLength,
  measuredWords,
  recutWords,
  riskWords,
  SURVEY_VERDICT_WORDS,
  seamMeasuresWords,
  seamPlace,
  seamVerdictWords,
  setAsideWords,
  spreadLength,
  stretchWords,
  teachesWords,
} from './survey-words.ts';
export { perMinute, turningWords } from './turning-words.ts';
export { wayWords } from './way-words.ts';
