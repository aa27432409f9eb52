export { fitRadius, type SectionPoint } from './circle-fit.ts';
export { cutPass, type Floor, type FloorPass, flatFloor, floorDepthAt } from './floor.ts';
export { type FloorShape, ligamentUnder, measureFloor, shallowestIn } from './measure-floor.ts';
export {
  arcHeight,
  faceLength,
  halfWidthAt,
  heightAt,
  type PassSection,
  passArea,
  passWidth,
  WALL_FLARE,
} from './pass-section.ts';
export { type OutlineKind, runOutLength, targetOutline } from './target-outline.ts';
