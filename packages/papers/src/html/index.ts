export { PAPER_FACES, PAPER_STYLESHEET } from './paper-stylesheet.ts';
export { renderHtml } from './render-html.ts';
