export { BlockList } from './block-list.tsx';
export { BlockPanel } from './block-panel.tsx';
export { BlockTable } from './block-table.tsx';
