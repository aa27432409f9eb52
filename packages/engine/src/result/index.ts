export { bandSchema, spreadSchema } from './prediction.ts';
export { sentenceSchema } from './sentence.ts';
