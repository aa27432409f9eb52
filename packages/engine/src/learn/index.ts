export { beliefOfFamily, type Knowledge, learnFrom } from './knowledge.ts';
export {
  type Family,
  familyName,
  type GaugedPass,
  type GaugedStation,
  type ShopObservation,
  type SizeBand,
  sizeBand,
} from './observation.ts';
