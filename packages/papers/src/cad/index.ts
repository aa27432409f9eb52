export { DRAWING_KINDS, type DrawingKind, type MadeDrawing, makeDrawing } from './drawing-set.ts';
export { scaleDrawingToDxf } from './scale-drawing-to-dxf.ts';
export { scaleDrawingToSvg } from './scale-drawing-to-svg.ts';
export { type SurveyFile, surveyFiles } from './survey-files.ts';
