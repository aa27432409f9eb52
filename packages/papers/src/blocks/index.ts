export { type CheckedReading, checkBlocks, connectionTable, dailyBlocks } from './commission-tables.ts';
export {
  assumptionTable,
  changeNotes,
  changeTable,
  extraTable,
  itemTable,
  refillText,
  stepTable,
  totalTable,
  trialText,
  wayNotes,
  wayTable,
} from './cost-tables.ts';
export { costDefaults, defaultsTable } from './defaults-table.ts';
export { type Figure, valueAndUnit } from './figure.ts';
export { gaugeStudyBlocks } from './gauge-study-blocks.ts';
export { gaugeTable } from './gauge-table.ts';
export { grooveTable, plateTable } from './groove-table.ts';
export { crewBlocks, sectionBlocks } from './hazard-blocks.ts';
export {
  crewTables,
  fumeSources,
  fumeTable,
  mixtureBlocks,
  noiseTable,
  ruleTable,
  verdictTable,
} from './hazard-tables.ts';
export { heatBlocks } from './heat-blocks.ts';
export {
  coolingBlocks,
  endBlocks,
  hardnessBlocks,
  heatGround,
  heatPassTable,
  heatTable,
  preheatBlocks,
  restList,
  skinBlock,
} from './heat-tables.ts';
export {
  familyTable,
  knowledgeBlocks,
  nextTrialBlocks,
  outlierWords,
  SPREAD_LEVELS,
  scoreWords,
  spreadTable,
} from './knowledge-blocks.ts';
export { limitTable, remedyList } from './limit-table.ts';
export type {
  ColumnsBlock,
  DrawingBlock,
  Field,
  FieldsBlock,
  FiguresBlock,
  HeadingBlock,
  ListBlock,
  PaperBlock,
  PaperCode,
  PaperDocument,
  PaperSize,
  ParagraphBlock,
  SignaturesBlock,
  TableBlock,
  TableColumn,
  TableMark,
} from './paper-document.ts';
export { bandText, passTable } from './pass-table.ts';
export { choiceTable, setupText, stationTable, sureList } from './plan-tables.ts';
export { plateWords } from './plate-figures.ts';
export { refusalBlocks, refusalReasons } from './refusal-blocks.ts';
export {
  causeBlocks,
  remainingBlocks,
  runBlocks,
  runEventTable,
  runFigures,
  runRecutTables,
  runStretchTable,
} from './run-blocks.ts';
export { expectationFigures, passesNote, rigFigures, settingFigures } from './setting-figures.ts';
export {
  airTable,
  leadTable,
  lossTable,
  pickTable,
  routeTable,
  senseList,
  sourceTable,
  supplyBlocks,
} from './supply-blocks.ts';
export {
  asideBlocks,
  filesList,
  historyBlocks,
  measuresList,
  nextBlock,
  quantityTable,
  recutBlocks,
  scannedBlocks,
  stretchTable,
  surveyBlocks,
  wantedBlock,
} from './survey-blocks.ts';
export { torchDrawingOf, turningBlocks } from './torch-blocks.ts';
