export type { BlockFace, BlockHeat, BlockHeatInput } from './block-heat.ts';
export {
  COOLING_START_MOST,
  coolingTimeThick,
  coolingTimeThin,
  transitionThickness,
} from './cooling-time.ts';
export { backFaceEasing } from './ease-back-face.ts';
export { faceHeat } from './face-heat.ts';
export type { HeatField, HeatFrame } from './field.ts';
export type { FloorLine, FloorPoint } from './floor-line.ts';
export { type GougingStart, gougingStart } from './gouging-start.ts';
export { type HardnessBand, hardnessBand, QUENCH_TIME, skinHardness } from './hardness-band.ts';
export { type FormulaHardness, hardnessByFormulas, martensiteHardness } from './hardness-formulas.ts';
export { arcReachLimit, heatLimits } from './heat-limits.ts';
export { type HeatOfPlanInput, heatOfPlan } from './heat-of-plan.ts';
export {
  ARC_SHARE,
  type HeatSpan,
  KEPT_SOURCES,
  type KeptHeat,
  keptHeat,
  type MeltingNeed,
  type PassEnergy,
  type StatedShare,
} from './kept-heat.ts';
export { coolingTimeOfLine, type LineOnPlate, lineSourceRise } from './line-source.ts';
export type {
  CoolingRow,
  HardnessOutcome,
  HeatAssumptionOutcome,
  HeatEndsOutcome,
  HeatOutcome,
  HeatPassOutcome,
  PreheatOutcome,
  PreheatRow,
} from './outcome.ts';
export {
  type HydrogenControlPreheat,
  preheatHydrogenControl,
  type Restraint,
  type SusceptibilityGroup,
} from './preheat-hydrogen-control.ts';
export { type MethodBPreheat, type PreheatInput, preheatMethodB } from './preheat-method-b.ts';
export { preheatPrequalified } from './preheat-prequalified.ts';
export { type RepairPreheat, repairPreheat } from './repair-preheat.ts';
export type { SeamBeyond, SeamEndHeat, SeamEndInput, SeamPass, SeamPlace } from './seam-end-heat.ts';
export type {
  GrooveSurfacePoint,
  HeatAccount,
  SectionHeat,
  SectionHeatInput,
  SectionPass,
} from './section-heat.ts';
export type { HeatRuns, StationPass } from './section-runs.ts';
export { solveBlock } from './solve-block.ts';
export { solveSeamEnd } from './solve-seam-end.ts';
export { solveSection } from './solve-section.ts';
export type { SurfaceLoss } from './surface-loss.ts';
export type { ThermalProperties } from './thermal-tables.ts';
export { type Transformation, transformationOf } from './transformation.ts';
