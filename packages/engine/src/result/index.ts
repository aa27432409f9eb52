export { type KnowledgeReport, knowledgeReportSchema } from './knowledge.ts';
export { bandSchema, spreadSchema } from './prediction.ts';
export { sentenceSchema } from './sentence.ts';
