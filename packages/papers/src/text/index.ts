export { renderCostText } from './render-cost-text.ts';
export { renderHazardText } from './render-hazard-text.ts';
export { renderHeatText } from './render-heat-text.ts';
export { renderKnowledgeText } from './render-knowledge-text.ts';
export { renderNextTrialText } from './render-next-trial-text.ts';
export { renderRunText } from './render-run-text.ts';
export { renderSupplyText } from './render-supply-text.ts';
export { renderText } from './render-text.ts';
