export {
  type Bay,
  type BayArea,
  type BayHose,
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
