export type { HeatField, HeatFrame } from './field.ts';
export type { FloorLine, FloorPoint } from './floor-line.ts';
export type {
  GrooveSurfacePoint,
  HeatAccount,
  SectionHeat,
  SectionHeatInput,
  SectionPass,
} from './section-heat.ts';
export { solveSection } from './solve-section.ts';
export type { ThermalProperties } from './thermal-tables.ts';
