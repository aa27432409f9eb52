export { judgeStation, type Station, type StationJudgement } from './judge-station.ts';
export { READINGS_TEXT_MOST, type ReadReadings, readReadings } from './read-readings.ts';
export { readingsFields } from './readings-fields.ts';
export { readingsJsonSchema } from './readings-json-schema.ts';
export type { Readings } from './readings-schema.ts';
