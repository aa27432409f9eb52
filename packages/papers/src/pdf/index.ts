export { type PaperPdf, renderPaperPdf, renderPdf } from './render-pdf.ts';
