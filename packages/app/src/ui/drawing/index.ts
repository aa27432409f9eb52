export { DrawingView } from './drawing-view.tsx';
export { NotReadYet } from './not-read-yet.tsx';
export { useSize } from './use-size.ts';
