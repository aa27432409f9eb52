export { useHazards } from '../../job/use-hazards.ts';
export { HazardsPage } from './page.tsx';
