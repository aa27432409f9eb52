export { CourseBox } from './course-box.tsx';
export { timeScale } from './time-scale.ts';
