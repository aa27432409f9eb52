export { planOf, readGood } from './example-plan.ts';
export { MemoryStorage } from './memory-storage.ts';
