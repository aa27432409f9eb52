export { type Bench, openBench } from './bench.ts';
export { BenchContext, useBench, useBenchState } from './bench-context.ts';
export { fetchHistory } from './bench-history.ts';
export { fetchKitInUse, kitInUse, usedKit } from './bench-kit.ts';
export { fetchStanding, standingOf } from './bench-runs.ts';
export { type BenchState, cutPlace, isCurrent, isOutdated, type Planned } from './bench-state.ts';
export { DEMO_JOB, DEMO_SEED, demoFaults, forgetDemo } from './demo-story.ts';
export { startOf } from './start-of.ts';
export { markPlanned, markSection } from './timing.ts';
