export { SeamStripView } from './seam-strip-view.tsx';
