export type { FaultAnswer } from './answer-choice.tsx';
export { FaultsPanel } from './faults-panel.tsx';
export { faultsView, onlyNamed } from './faults-view.ts';
export { newId } from './new-id.ts';
