export { DrawingView } from './drawing-view.tsx';
export { useWidth } from './use-width.ts';
