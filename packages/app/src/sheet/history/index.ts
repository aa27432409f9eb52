export { HistoryPanel, type HistorySource } from './history-panel.tsx';
