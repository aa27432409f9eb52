export { RibbonView } from './ribbon-view.tsx';
