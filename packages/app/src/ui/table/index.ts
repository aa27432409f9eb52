export { ColumnHeads } from './column-heads.tsx';
export { ScrollBox } from './scroll-box.tsx';
export { ScrollTable } from './scroll-table.tsx';
