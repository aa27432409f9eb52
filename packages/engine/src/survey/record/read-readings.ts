import {
  type CombinationIssue,
  DOCUMENT_TEXT_MOST,
  type DocumentKind,
  documentCodes,
  readDocument,
} from '../../document/index.ts';
import type { Outcome } from '../../issue/index.ts';
import { type Readings, readingsSchema } from './readings-schema.ts';

/** Greatest size of a readings file [characters]. */
export const READINGS_TEXT_MOST = DOCUMENT_TEXT_MOST;

const READINGS: DocumentKind<typeof readingsSchema> = {
  name: 'readings',
  versionField: 'furrow_readings',
  schema: readingsSchema,
  codes: documentCodes('READINGS'),
};

/** Readings as read, with the hash of their content. */
export interface ReadReadings {
  readonly readings: Readings;
  /** SHA-256 of the content, in hex; layout and comments do not count. */
  readonly revision: string;
}

/**
 * Reads a readings file, YAML or JSON: what was run and gauged on a job, or what is wrong with it and where.
 *
 * @param text - the file's content [text], at most 200 000 characters
 * @returns the readings in SI and their revision, or the issues [record]
 * @source none: bookkeeping
 * @example
 * readReadings('furrow_readings: 1\nstations:\n  - { at: 1 m, depth: 12 mm }').value.readings.stations // => [{"at":1,"depth":0.012}]
 */
export function readReadings(text: string): Outcome<ReadReadings> {
  const outcome = readDocument(text, READINGS, {
    wholeOf: (readings) => readings,
    contradictions: (readings) => [...passesTwice(readings), ...recutsAmiss(readings)],
  });
  if (!outcome.ok) return outcome;
  const { whole: readings, revision } = outcome.value;
  return { ok: true, value: { readings, revision } };
}

function passesTwice({ passes = [] }: Readings): CombinationIssue[] {
  return passes.flatMap(({ number }, index) =>
    passes.findIndex((other) => other.number === number) === index
      ? []
      : [
          {
            at: ['passes', index, 'number'],
            message: `Pass ${number} is told twice.`,
            read: String(number),
            accepted: 'each pass once; what happened on the way belongs to events',
          },
        ],
  );
}

/** Recuts that end before they begin, and readings after a recut that the file does not know. */
function recutsAmiss({ recuts = [], stations = [], files = [] }: Readings): CombinationIssue[] {
  const unknown = (list: 'stations' | 'files', index: number, count: number): CombinationIssue => ({
    at: [list, index, 'after_recut'],
    message: `It is said to be measured after recut ${count}, and the file tells of ${recuts.length}.`,
    read: String(count),
    accepted: `0 to ${recuts.length}; each recut belongs to recuts`,
  });
  return [
    ...recuts.flatMap(({ from, to }, index): CombinationIssue[] =>
      from < to
        ? []
        : [
            {
              at: ['recuts', index, 'to'],
              message: `Recut ${index + 1} ends before it begins.`,
              read: 'to not beyond from',
              accepted: 'a place beyond the one where it began',
            },
          ],
    ),
    ...(['stations', 'files'] as const).flatMap((list) =>
      (list === 'stations' ? stations : files).flatMap(({ after_recut: count = 0 }, index) =>
        count > recuts.length ? [unknown(list, index, count)] : [],
      ),
    ),
  ];
}
