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
export { chooseStation, type PickedKind, type PickedRun, type StationChoice } from './choose-station.ts';
