export { type KnowledgeReport, knowledgeReportSchema } from './knowledge.ts';
export {
  type Band,
  type ElectrodeChange,
  type GaugeRow,
  type GaugeStop,
  type Plan,
  type PlanPass,
  planSchema,
  type SectionBand,
  type Spread,
  statePlan,
  type Tryout,
} from './plan.ts';
export { deepenText, planTables, tryoutText } from './plan-tables.ts';
export { bandSchema, spreadSchema } from './prediction.ts';
export { sentenceSchema } from './sentence.ts';
