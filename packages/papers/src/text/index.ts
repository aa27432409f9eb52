export { renderHeatText } from './render-heat-text.ts';
export { renderSupplyText } from './render-supply-text.ts';
export { renderText } from './render-text.ts';
