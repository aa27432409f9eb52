export { MarginList } from './margin-list.tsx';
export { VerdictMark } from './verdict-mark.tsx';
