/** The engine: pure computation, SI inside, the same code in Node, browser and worker. */
export * from './answer/index.ts';
export * from './commission/index.ts';
export * from './cost/index.ts';
export * from './delimited/index.ts';
export {
  type DefaultUsed,
  type DocumentDifference,
  type DocumentField,
  type DocumentPath,
  type DocumentTree,
  documentTree,
  type FieldFacts,
  type FileHash,
  fileHash,
  type JsonSchema,
  pathText,
  topField,
} from './document/index.ts';
export * from './faults/index.ts';
export * from './groove/index.ts';
export * from './hazard/index.ts';
export * from './heat/index.ts';
export * from './issue/index.ts';
export * from './job/index.ts';
export * from './kit/index.ts';
export * from './learn/index.ts';
export * from './limit/index.ts';
export * from './material/index.ts';
export * from './numeric/index.ts';
export * from './plan/index.ts';
export * from './quantity/index.ts';
export * from './removal/index.ts';
export * from './result/index.ts';
export * from './run/index.ts';
export * from './supply/index.ts';
export * from './survey/index.ts';
