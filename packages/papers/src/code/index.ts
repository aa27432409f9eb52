export { codeDrawing } from './code-drawing.ts';
