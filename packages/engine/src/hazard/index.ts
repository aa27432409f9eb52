export { CARBON_MONOXIDE_SOURCE, type ElectrodeGas, electrodeGas } from './carbon-monoxide.ts';
export { convexHull, type PlanPoint } from './convex-hull.ts';
export { concentrationAfter, dilutionFlow, type MixedRoom, purgeTime } from './dilution.ts';
export { dailyExposureLevel, nioshAverage, nioshDose, nioshDuration } from './equal-energy-rule.ts';
export {
  type ExposureLimit,
  exposureLimit,
  LIMIT_SET_NAMES,
  type LimitSet,
  massConcentration,
} from './exposure-limit.ts';
export {
  europeanShade,
  leastShade,
  SHADE_SOURCE,
  type ShadeByCurrent,
  shadeTransmittance,
  suggestedShade,
} from './filter-shade.ts';
export { type FireZone, type FireZoneWanted, fireZone, LEAST_RADIUS, sparkReach } from './fire-zone.ts';
export {
  OSHA_ACTION_THRESHOLD,
  OSHA_PEL_THRESHOLD,
  oshaAverage,
  oshaDose,
  oshaDuration,
} from './five-decibel-rule.ts';
export {
  asksForFans,
  FLOW_PER_WELDER,
  LEAST_CEILING,
  ROOM_PER_WELDER,
  type VentilatedRoom,
} from './general-ventilation.ts';
export { hazardLimits } from './hazard-limits.ts';
export { type Derating, type HearingProtection, hearingAttenuation } from './hearing-protection.ts';
export { CAPTURE_VELOCITY, hoodFlow, type MovableHoodRow, movableHood } from './hood-flow.ts';
export { judgeHazards } from './judge-hazards.ts';
export {
  distanceFromLead,
  distanceFromPair,
  fieldOfLead,
  fieldOfPair,
  IMPLANT_FIELD,
  PROJECTILE_FIELD,
} from './magnetic-field.ts';
export { type MixturePart, mixtureIndex, shiftConcentration } from './mixture-index.ts';
export type { NoiseTask } from './noise-task.ts';
export type {
  BreachOutcome,
  CrewOutcome,
  FieldOutcome,
  FigureOutcome,
  FireZoneOutcome,
  FumeOutcome,
  HazardOutcome,
  HazardSettingOutcome,
  ProtectionOutcome,
  RangeOutcome,
  RowOutcome as HazardRowOutcome,
  RuleOutcome as HazardRuleOutcome,
  SectionOutcome as HazardSectionOutcome,
  SubstanceOutcome,
  TaskOutcome,
} from './outcome.ts';
export {
  GOUGING_NOISE_SOURCE,
  GOUGING_SOUND_POWER,
  type LevelBand,
  type NoisyWork,
  PROCESS_NOISE_SOURCE,
  processNoise,
} from './process-noise.ts';
export type { HazardQuestion } from './question.ts';
export { distanceToLevel, levelAtDistance, levelOfAll } from './sound-level.ts';
export { STANDING_CAUTIONS, STOP_WORK } from './standing-lists.ts';
export {
  type Coating,
  type ExpectedSubstance,
  expectedSubstances,
  SUBSTANCE_NAMES,
  type Substance,
} from './substance.ts';
export { type MatrixVentilation, matrixVentilation } from './ventilation-matrix.ts';
export { breaksRule, HAZARD_WORDINGS, type HazardWording, hazardWording } from './wording.ts';
export { type ZoneOutlines, zoneOutlines } from './zone-outline.ts';
