export * from './document/index.ts';
export * from './drawing/index.ts';
export { renderPdf } from './pdf/index.ts';
