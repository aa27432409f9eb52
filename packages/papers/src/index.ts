export * from './blocks/index.ts';
export * from './cad/index.ts';
export * from './drawing/index.ts';
export { PAPER_FACES, PAPER_STYLESHEET, renderHtml } from './html/index.ts';
export * from './kinds/index.ts';
export { type PaperPdf, paperFace, renderPaperPdf, renderPdf } from './pdf/index.ts';
export {
  renderCostText,
  renderGaugeText,
  renderHazardText,
  renderHeatText,
  renderKnowledgeText,
  renderNextTrialText,
  renderRoundText,
  renderRunText,
  renderSupplyText,
  renderSurveyText,
  renderText,
} from './text/index.ts';
export * from './words/index.ts';
