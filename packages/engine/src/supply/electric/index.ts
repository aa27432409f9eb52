export { sourceCurrent, sourceVoltage } from './characteristic.ts';
export { CONDUCTOR_SIZES, type ConductorSize, conductorSizeOf, type SizeFamily } from './conductor-size.ts';
export { copperResistance } from './copper.ts';
export { arcMinutesInTen, cableDutyFactor } from './duty.ts';
export { type ElectricKit, electricLimits } from './electric-limits.ts';
export type { Arc, ElectricLoop } from './electric-loop.ts';
export { effectiveSupplyCurrent, type InputPower, inputPower } from './input-power.ts';
export { type JointState, jointState } from './joint-heat.ts';
export type { Lead, LeadCovering, LeadJoint } from './lead.ts';
export { type HeatModel, leadHeatCapacity, leadHeatLoss } from './lead-heat.ts';
export {
  leadTemperatures,
  leadTimeConstant,
  type TemperatureCourse,
  type TemperaturePoint,
  timeToTemperature,
} from './lead-temperature.ts';
export type {
  LeadState,
  LoopLoss,
  LoopResult,
  NoWorkingLoop,
  SourceState,
  WorkingLoop,
} from './loop-result.ts';
export type { Characteristic, PowerSource, RatingPoint, SourceBranch } from './power-source.ts';
export { conventionalLoadVoltage, permissibleMinutes, permittedCurrent, ratedMaximum } from './rating.ts';
export { type ArcAtWork, type SenseLanding, senseLandings } from './sense-landings.ts';
export { type SenseError, senseWireError } from './sense-wire.ts';
export { solveLoop } from './solve-loop.ts';
export {
  leadAmpacity,
  linearHeatModel,
  runawayCurrent,
  type SteadyTemperature,
  steadyTemperature,
} from './steady-temperature.ts';
export { cableSurfaceLoss, cylinderNusselt } from './surface-loss.ts';
