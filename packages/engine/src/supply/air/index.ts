export { type AirDemand, REGULATOR_PRESSURE, type SourcedPressure, TORCH_PRESSURE } from './air-demand.ts';
export { airLimits } from './air-limits.ts';
export { type AirPoint, type AirPressure, airPoint } from './air-point.ts';
export { AIR_FITTINGS, AIR_ROUGHNESS, airBore } from './air-sizes.ts';
export {
  AIR_GAS_CONSTANT,
  ATMOSPHERE,
  airDensity,
  airViscosity,
  atmosphereAt,
  FREE_AIR_DENSITY,
  massOfFreeAir,
} from './air-state.ts';
export type {
  AirComponent,
  AirCompressor,
  AirDraw,
  AirFitting,
  AirItem,
  AirParallel,
  AirReceiver,
  AirRegulator,
  AirRun,
  AirSupply,
  AirTorch,
  DeliveryPoint,
} from './air-supply.ts';
export { type AirOutcome, airThroughDuty, type RestoredPressure } from './air-through-duty.ts';
export { checkAir } from './check-air.ts';
export { freeAirDelivered } from './compressor-delivery.ts';
export {
  type AirWish,
  airDrawdown,
  type Drawdown,
  type DrawdownBelow,
  type DrawdownSample,
} from './drawdown.ts';
export { colebrookFriction, frictionFactor } from './friction-factor.ts';
export { type HoseChange, type HoseChanges, leastHoseChanges, type StockHose } from './hose-changes.ts';
export { type HoseFlow, hoseLossPerMetre } from './hose-loss.ts';
export {
  type IsothermalPassage,
  isothermalChoke,
  isothermalFlow,
  isothermalInlet,
} from './isothermal-flow.ts';
export { receiverAir, receiverTime, receiverVolume } from './receiver-time.ts';
export {
  conductanceFromFlow,
  conductanceOfArea,
  conductedFlow,
  conductedInlet,
  type SonicConductance,
} from './sonic-conductance.ts';
