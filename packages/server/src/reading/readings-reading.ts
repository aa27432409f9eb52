import { READINGS_TEXT_MOST, readReadings } from '@furrow/engine';
import { shopFileReading } from './shop-file-reading.ts';

/** How the text of what was run and gauged on a job is read. */
export const READINGS_READING = shopFileReading({
  noun: 'readings file',
  most: READINGS_TEXT_MOST,
  tooLarge: 'READINGS_TOO_LARGE',
  untitled: 'Readings',
  read: readReadings,
  titleOf: ({ readings }) => readings.date ?? '',
});
