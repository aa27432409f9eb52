import { type CourseDrawingInput, courseDrawing } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { DrawingView, useSize } from '../drawing/index.ts';

/** Height of a course on the page [px]. */
const HEIGHT = 200;

/** A course over time, drawn as wide as its panel. */
export function CourseBox(course: Omit<CourseDrawingInput, 'width' | 'height'>): VNode {
  const [box, { width }] = useSize<HTMLDivElement>();
  return (
    <div ref={box} class="drawing-box course-box">
      {width === 0 ? null : <DrawingView drawing={courseDrawing({ ...course, width, height: HEIGHT })} />}
    </div>
  );
}
