export { DrawingView } from './drawing-view.tsx';
export { useSize } from './use-size.ts';
