export { CautionPanel } from './caution-panel.tsx';
export { HistoryBar } from './history-bar.tsx';
export { KitNotice } from './kit-notice.tsx';
export { ResultStatus } from './result-status.tsx';
export { OutdatedBox, ResultDetails, ResultHead } from './result-view.tsx';
