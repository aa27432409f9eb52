export { CourseBox } from './course-box.tsx';
export { type TimeScale, timeScale } from './time-scale.ts';
