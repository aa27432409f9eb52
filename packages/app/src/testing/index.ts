export { planOf, readGood } from './example-plan.ts';
export { FakeWorker } from './fake-worker.ts';
export { MemoryStorage } from './memory-storage.ts';
