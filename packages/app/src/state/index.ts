export { type Bench, type BenchStart, openBench } from './bench.ts';
export { BenchContext, useBench, useBenchState } from './bench-context.ts';
export { type BenchState, cutPlace, isCurrent, isOutdated, isUnsaved } from './bench-state.ts';
export { draftOf, keepDraft } from './draft.ts';
export { markPlanned, markSection } from './timing.ts';
