export { type Bench, openBench } from './bench.ts';
export { BenchContext, useBench, useBenchState } from './bench-context.ts';
export { fetchHistory } from './bench-history.ts';
export { fetchKitInUse, kitInUse, usedKit } from './bench-kit.ts';
export { type BenchState, cutPlace, isCurrent, isOutdated, isUnsaved, type Planned } from './bench-state.ts';
export { draftOf, dropDraft, keepDraft } from './draft.ts';
export { DEMO_JOB, startOf } from './start-of.ts';
export { markPlanned, markSection } from './timing.ts';
