export {
  type Bay,
  type BayArea,
  type BayHose,
  type BayJet,
  type BayLead,
  type BayPoint,
  type BayStock,
  LAYING_PRACTICE,
  type StationTask,
} from './bay.ts';
export {
  chooseStation,
  type PickedKind,
  type PickedRun,
  type StationChoice,
  stationAt,
} from './choose-station.ts';
export { jetOutlines } from './jet.ts';
export { placeCautions } from './place-cautions.ts';
