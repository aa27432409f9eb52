export { renderPdf } from './render-pdf.ts';
