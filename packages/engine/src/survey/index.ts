export { type Circle, type CircleFit, geometricCircle, taubinCircle } from './section/circle.ts';
export {
  measureSection,
  type Section,
  type SectionOptions,
  type SectionOutline,
  type SectionPoints,
} from './section/measure-section.ts';
export { gaussianFilter } from './section/profile-filter.ts';
export type { Measured } from './section/quantity.ts';
export type { SectionScan } from './section/scan.ts';
