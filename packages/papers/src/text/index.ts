export { renderText } from './render-text.ts';
