export { bayAtScale } from './bay-at-scale.ts';
export { ribbonAtScale } from './ribbon-at-scale.ts';
export type { ScaleDrawing } from './scale-drawing.ts';
export { scaleDrawingToDxf } from './scale-drawing-to-dxf.ts';
export { scaleDrawingToSvg } from './scale-drawing-to-svg.ts';
export { sectionAtScale } from './section-at-scale.ts';
