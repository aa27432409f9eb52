export { SectionView } from './section-view.tsx';
