export { type Decision, DecisionPanel } from './decision-panel.tsx';
export { EntryText } from './entry-text.tsx';
