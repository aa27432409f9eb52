export { HazardsPage } from './hazards-page.tsx';
export { useHazards } from './use-hazards.ts';
