export { type PaperPdf, renderPaperPdf, renderPdf } from './render-pdf.ts';
export { paperFace } from './typefaces.ts';
