export { type AirPathInput, airPathDrawing } from './air-path-drawing.ts';
export { type BayDrawingInput, type BayReach, bayDrawing, bayScale } from './bay-drawing.ts';
export { type BayScale, bayPlace, bayPoint } from './bay-scale.ts';
export { type CostDrawingInput, costDrawing } from './cost-drawing.ts';
export { type Course, type CourseDrawingInput, courseDrawing } from './course-drawing.ts';
export { type DepthDrawingInput, depthDrawing } from './depth-drawing.ts';
export { dimensionArrows } from './dimension-arrows.ts';
export type {
  AreaMark,
  DimensionMark,
  Drawing,
  DrawingPoint,
  LineMark,
  Mark,
  MarkRole,
  PolylineMark,
  TextMark,
} from './drawing.ts';
export { drawingToSvg } from './drawing-to-svg.ts';
export { escapeMarkup } from './escape-markup.ts';
export { type FireZoneDrawingInput, fireZoneDrawing } from './fire-zone-drawing.ts';
export { BESIDE_CUT, type HeatCourse, heatCourse } from './heat-course.ts';
export { type HeatDrawingInput, heatDrawing } from './heat-drawing.ts';
export type { HeatMarks } from './heat-levels.ts';
export { axisPlaceText, axisText, lengthAxis } from './length-axis.ts';
export { type SeamCurve, type SeamCurveDrawingInput, seamCurveDrawing } from './seam-curve-drawing.ts';
export { type SeamStripAxis, seamStripX } from './seam-strip-axis.ts';
export { type SeamStripDrawingInput, seamStripDrawing, seamStripScale } from './seam-strip-drawing.ts';
export { type SectionDrawingInput, sectionDrawing } from './section-drawing.ts';
export { textWidth } from './text-width.ts';
export { type TorchDrawingInput, torchDrawing } from './torch-drawing.ts';
